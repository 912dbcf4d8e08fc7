% Recordings written by Octave in the forms of MAT files it knows. Writes octave-*.mat beside itself.
t = (0:0.125:12.375)';
a = [round(1000 * sin(t)) / 1000, t .^ 2];
counts = int32([5, -7, 2147483647, -2147483648, 0]);
test.acceleration = a(:, 1);
test.unit = 'g';
test.serial = {'A-1', [1 2 3]};
Fs = 8;
note = 'invented fan';
save('-v6', 'octave-v6.mat', 't', 'a', 'counts', 'test', 'Fs', 'note');
save('-v7', 'octave-v7.mat', 't', 'a', 'counts', 'test', 'Fs', 'note');
