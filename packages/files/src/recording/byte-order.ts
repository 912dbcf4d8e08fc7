/**
 * Whether shares of full scale of 16 bits become far smoother when the two bytes of each are exchanged: the mean step
 * between neighbours falls to a tenth. White noise does not; what was written with the other order of bytes does.
 */
export function bytesExchanged(values: Float64Array): boolean {
  let [asIs, exchanged] = [0, 0];
  let [before, beforeExchanged] = [0, 0];
  for (let index = 0; index < values.length; index++) {
    const whole = Math.round(values[index]! * 32_768) & 0xffff;
    const other = ((((whole & 0xff) << 8) | (whole >> 8)) << 16) >> 16;
    const own = (whole << 16) >> 16;
    if (index > 0) {
      asIs += Math.abs(own - before);
      exchanged += Math.abs(other - beforeExchanged);
    }
    [before, beforeExchanged] = [own, other];
  }
  return values.length >= 256 && exchanged > 0 && 10 * exchanged < asIs;
}
