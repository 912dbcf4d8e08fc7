// The invented machines a generated plant is made of: each gives the text of one machine with its points, one after the
// other, each varied by the numbers it draws. Their order on the plant is that of this list.

/** A pump on a variable-speed drive: a route point, a current loop through a junction box, and a point on the motor. */
function pump(draw) {
  const vanes = draw.whole(5, 7);
  const rollers = draw.whole(9, 14);
  return {
    title: `Pump ${draw.one('for raw water', 'for cooling water', 'for condensate')}, ${draw.whole(90, 200)} kW, variable speed`,
    head: `
    facts:
      power: { value: ${draw.whole(90, 200)} kW, status: nameplate, source: motor plate }
      support: { value: rigid, status: drawing, source: grouted steel base }
    shafts: [motor, pump]
    elements:
      motor:
        kind: induction-motor
        on: motor
        poles: { value: 4, status: nameplate, source: motor plate }
        supply: converter
        line-frequency: { value: 50 Hz, status: nameplate, source: motor plate }
        rated-slip: { value: ${draw.whole(12, 20)} r/min, status: nameplate, source: motor plate }
        torque-law: { value: quadratic, status: assumed, source: centrifugal pump }
        rotor-bars: { value: 40, status: drawing, source: rotor drawing }
        carrier: { value: 4 kHz, status: data sheet, source: converter manual }
      coupling: { kind: coupling, from: motor, to: pump }
      drive-end:
        kind: rolling-bearing
        on: pump
        elements: { value: ${rollers}, status: drawing, source: pump section }
        element-diameter: ${draw.fixed(20, 24, 1)} mm
        pitch-diameter: ${draw.whole(105, 125)} mm
        contact-angle: ${draw.one(0, 15, 40)} deg
      impeller:
        kind: impeller
        on: pump
        vanes: { value: ${vanes}, status: drawing, source: impeller drawing }
    operation:
      motor: motor
      line-frequency: { value: 25..50 Hz, status: data sheet, source: converter settings }${zones('PS-114, pumps up to 200 kW')}`,
    points: [
      {
        name: 'drive-end-loop',
        text: `${place('pump, drive-end bearing housing', 'vertical', 'online', draw.whole(35, 70))}
        targets:${overall('pump/1x at lowest', 'pump/1x at highest', 'impeller/vane-pass at highest')}
        disturbances:
          cavitation and knocks: { level: 5 g peak }
        chain:
          transducer: LPV-25
          mount: stud
          cable: TSP
          cable-length: { value: ${draw.whole(4, 9)} m, status: measured, source: walked at the machine }
          in-line:
            - part: JB-IS
              tag: ${draw.tag('JB')}
              cable: TSP
              cable-length: { value: ${draw.whole(30, 110)} m, status: measured, source: walked on the tray }
            - LOOP-24
          input: AI-16${wiring(draw)}
        alarm:
          baseline: { value: ${draw.fixed(1.1, 2.4, 1)} mm/s rms 2-1000 Hz, status: measured, source: route data at 50 Hz }
          delay: 3 s`,
      },
      {
        name: 'drive-end-route',
        text: `${place('pump, drive-end bearing housing', 'horizontal, to the right seen from the motor', 'portable', draw.whole(35, 70))}
        targets:${overall('pump/1x at lowest', 'pump/1x at highest', 'impeller/vane-pass at highest')}${line('vane pass', 'hydraulic load, wear of the impeller', 'impeller/vane-pass at highest', '0.05 mm/s rms', '5 mm/s rms')}${bursts('first spall, eight weeks ahead')}
        disturbances:
          cavitation and knocks: { level: 5 g peak }${chain('ACC-100', 'PORT-24', 2)}`,
      },
      {
        name: 'motor-drive-end',
        text: `${place('motor, drive-end shield', 'vertical', 'portable', draw.whole(45, 75))}
        targets:${line('1x of the motor', 'unbalance', 'motor/1x at highest', '0.1 mm/s rms', '10 mm/s rms')}${chain('ACC-100', 'PORT-24', 2)}`,
      },
    ],
  };
}

/** A fan behind a gear pair: accelerometers on line to the equipment room. */
function fan(draw) {
  return {
    title: `Induced-draught fan behind a gear, ${draw.whole(600, 900)} kW`,
    head: `
    facts:
      power: { value: ${draw.whole(600, 900)} kW, status: nameplate, source: motor plate }
      support: { value: rigid, status: drawing, source: concrete block }
    shafts: [motor, fan]
    elements:
      gears:
        kind: gear-pair
        from: motor
        to: fan
        driving-teeth: { value: ${draw.whole(29, 37)}, status: drawing, source: gear drawing }
        driven-teeth: { value: ${draw.whole(71, 89)}, status: drawing, source: gear drawing }
      drive-end:
        kind: rolling-bearing
        on: fan
        elements: { value: ${draw.whole(16, 20)}, status: drawing, source: fan section }
        element-diameter: 38 mm
        pitch-diameter: ${draw.whole(230, 260)} mm
        contact-angle: 10 deg
      wheel:
        kind: impeller
        on: fan
        vanes: { value: ${draw.whole(10, 16)}, status: drawing, source: wheel drawing }
    operation:
      shaft: motor
      speed: { value: ${draw.whole(1470, 1490)} r/min, status: measured, source: tachometer }${zones('PS-114, fans')}`,
    points: [
      {
        name: 'drive-end',
        text: `${place('fan, drive-end pedestal', 'horizontal', 'online', draw.whole(40, 75))}
        targets:${line('1x of the fan', 'unbalance by deposits', 'fan/1x at highest', '0.1 mm/s rms', '15 mm/s rms')}${bursts('first spall, three months ahead')}${chain('ACC-100', 'ONL-24', draw.whole(30, 120))}${wiring(draw)}`,
      },
      {
        name: 'gear-case',
        text: `${place('gear case, fast shaft', 'vertical', 'online', draw.whole(50, 80))}
        targets:${line('mesh', 'wear and load of the teeth', 'gears/mesh at highest', '0.02 g rms', '4 g rms')}${chain('ACC-100', 'ONL-24', draw.whole(30, 120))}${wiring(draw)}`,
      },
    ],
  };
}

/** A reciprocating compressor in a classified area: an accelerometer behind a barrier, a loop behind an isolator. */
function compressor(draw) {
  const classified = `area classification drawing EX-${draw.whole(200, 299)}`;
  return {
    title: `Hydrogen compressor, four throws, ${draw.whole(16, 28) / 10} MW`,
    head: `
    facts:
      power: { value: ${draw.fixed(1.6, 2.8, 1)} MW, status: nameplate, source: motor plate }
      support: { value: rigid, status: drawing, source: concrete block }
    shafts: [crankshaft]
    elements:
      motor:
        kind: synchronous-motor
        on: crankshaft
        poles: { value: 12, status: nameplate, source: motor plate }
        supply: mains
        line-frequency: { value: 50 Hz, status: nameplate, source: motor plate }
      frame:
        kind: reciprocating-machine
        on: crankshaft
        throws: { value: 4, status: data sheet, source: compressor data sheet }
        acting: double
        stroke: { value: ${draw.whole(260, 300)} mm, status: data sheet, source: compressor data sheet }
    operation:
      motor: motor
      line-frequency: { value: 50 Hz, status: nameplate, source: mains }${zones('PS-207, frames of reciprocating compressors', [5.3, 8, 12])}
    area:
      zone: { value: 1, status: drawing, source: ${classified} }
      group: { value: IIC, status: drawing, source: ${classified} }
      temperature-class: { value: T3, status: drawing, source: ${classified} }
      ambient: { value: -20..40 °C, status: drawing, source: ${classified} }
      earth-resistance: { value: 0.5 ohm, status: assumed, source: requirement on the earth bar of the barriers }
      source: ${classified}`,
    points: [
      {
        name: 'frame-loop',
        text: `${place('frame, beside main bearing 3', 'horizontal', 'online', draw.whole(45, 65))}
        targets:${overall('crankshaft/1x at highest', '2 x crankshaft/1x at highest', '20 x crankshaft/1x at highest')}
        disturbances:
          knocks: { level: 10 g peak }${barred('LPV-25X', 'GI-420', draw.tag('GI'), 'AI-16', draw)}
        alarm:
          baseline: { value: ${draw.fixed(2.4, 3.6, 1)} mm/s rms 2-1000 Hz, status: measured, source: first run on hydrogen }
          delay: 3 s`,
      },
      {
        name: 'crosshead-guide',
        text: `${place('crosshead guide of throw 1, top', 'vertical', 'online', draw.whole(55, 75))}
        targets:
          crosshead impact:
            cause: loose crosshead pin or nut, liquid carried over
            observe: burst
            band: 10..2000 Hz
            smallest: 0.5 g peak
            largest: 50 g peak
            tolerance: ±10 %${barred('ACC-100X', 'ZB-28', draw.tag('ZB'), 'ONL-24', draw)}`,
      },
    ],
  };
}

/** A compressor on journal bearings: a pair of probes, and the casing above it. */
function turbo(draw) {
  const vanes = draw.whole(13, 19);
  return {
    title: `Steam-turbine driven compressor, ${draw.fixed(4, 8, 1)} MW, journal bearings`,
    head: `
    facts:
      power: { value: ${draw.fixed(4, 8, 1)} MW, status: nameplate, source: compressor plate }
      support: { value: rigid, status: drawing, source: foundation drawing }
      run-up: { value: 90 s, status: measured, source: start record }
    shafts: [rotor]
    elements:
      journal-1:
        kind: fluid-film-bearing
        on: rotor
        whirl: { value: 0.42..0.48, status: assumed, source: tilting pads }
      wheel:
        kind: impeller
        on: rotor
        vanes: { value: ${vanes}, status: drawing, source: impeller drawing }
    operation:
      shaft: rotor
      speed: ${draw.whole(70, 80) * 100}..${draw.whole(98, 108) * 100} r/min`,
    points: [
      {
        name: 'bearing-1',
        text: `${place('journal bearing 1, probes through the bearing cap', 'X to the right and Y to the left of the top, looking from the turbine', 'online', 105)}
        surroundings:
          shaft-diameter: { value: 110 mm, status: drawing, source: bearing drawing }
          shaft-material: { value: 4140 steel, status: assumed, source: to be confirmed by the material certificate }
          converter-temperature: { value: 55 °C, status: assumed, source: driver box }
          cable-temperature: { value: 55 °C, status: assumed, source: field cable begins at the driver box }
          rest-travel: { value: 0.465 mm, status: assumed, source: rest on the pads and growth of the bracket }
        targets:
          1x shaft vibration:
            cause: unbalance, rub
            observe: line
            of: shaft-relative
            frequency: rotor/1x at highest
            smallest: 6 um pp
            largest: ${draw.whole(180, 240)} um pp
            tolerance: ±6 %
            resolution: 1 Hz${chain('PRX-8', 'RACK-DC', draw.whole(120, 210))}
        probes:
          pair:
            kind: xy-pair
            angle-x: { value: 45 deg, status: drawing, source: bearing drawing }
            angle-y: { value: -45 deg, status: drawing, source: bearing drawing }
            seen-from: driver
            rotation: { value: clockwise, status: nameplate, source: arrow on the casing }
            gap-voltage: { value: -10.0 V, status: measured, source: static curve }
            gap-set: at rest
            ok-voltages: -17.7..-3 V`,
      },
      {
        name: 'bearing-1-casing',
        text: `${place('casing over journal bearing 1', 'vertical', 'online', draw.whole(110, 140))}
        surroundings:
          cable-temperature: { value: 75 °C, status: assumed, source: the cable leaves the casing in free air }
          converter-temperature: { value: 55 °C, status: assumed, source: driver box }
        targets:${line('blade pass', 'rub, stall, broken blade', 'wheel/vane-pass at highest', '0.02 g rms', '10 g rms')}
        disturbances:
          knocks: { level: 5 g peak }${chain('ACC-100H', 'ONL-24', draw.whole(120, 210))}${wiring(draw)}`,
      },
    ],
  };
}

/** A vibrating screen, washed down. */
function screen(draw) {
  return {
    title: `Double-deck screen, ${draw.whole(20, 40)} kW, wash sprays`,
    head: `
    facts:
      power: { value: ${draw.whole(20, 40)} kW, status: nameplate, source: motor plate }
      support: { value: flexible, status: drawing, source: body on springs }
    shafts: [exciter]
    elements:
      exciter:
        kind: screen-exciter
        on: exciter
        stroke: { value: ${draw.whole(8, 10)} mm pp, status: data sheet, source: process sheet }
        path: circular
      springs:
        kind: structural-mode
        frequency: { value: 2..4 Hz, status: assumed, source: body on its springs }
        shape: body on its springs
    operation:
      shaft: exciter
      speed: { value: ${draw.whole(900, 940)} r/min, status: measured, source: tachometer at the exciter }`,
    points: [
      {
        name: 'exciter-housing',
        text: `${place('exciter housing, one of four corners', 'radial, X of X and Y, seen from the drive side', 'online', draw.whole(55, 80))}
        surroundings:
          exposure: washed down
        targets:${line('looseness', 'loose side plates, broken springs', 'exciter/looseness at highest', '1 mm/s rms', '60 mm/s rms')}
        disturbances:
          stones: { level: 40 g peak }${chain('ACC-100W', 'ONL-24', draw.whole(40, 80))}${wiring(draw)}`,
      },
    ],
  };
}

function place(location, direction, installation, temperature) {
  return `
        location: ${location}
        direction: ${direction}
        installation: ${installation}
        surface-temperature: { value: ${temperature} °C, status: measured, source: infrared reading }`;
}

function zones(source, [ab, bc, cd] = [3.2, 5.1, 8.5]) {
  return `
    limits:
      a-b: ${ab} mm/s rms 2-1000 Hz
      b-c: ${bc} mm/s rms 2-1000 Hz
      c-d: ${cd} mm/s rms 2-1000 Hz
      source: plant specification ${source}`;
}

function overall(...components) {
  return `
          overall velocity:
            cause: severity against the plant specification
            observe: overall
            band: 2..1000 Hz
            components: [${components.join(', ')}]
            smallest: 0.5 mm/s rms
            largest: 20 mm/s rms
            largest-at: ${components[1]}
            tolerance: ±10 %`;
}

function line(name, cause, frequency, smallest, largest) {
  return `
          ${name}:
            cause: ${cause}
            observe: line
            frequency: ${frequency}
            smallest: ${smallest}
            largest: ${largest}
            tolerance: ±10 %
            resolution: 0.3125 Hz`;
}

function bursts(cause) {
  return `
          bearing bursts:
            cause: ${cause}
            observe: burst
            band: 2..10 kHz
            smallest: 0.1 g peak
            largest: 5 g peak
            tolerance: +41/-29.3 %`;
}

function chain(transducer, input, metres) {
  // A probe set needs its own supply core beside signal and common.
  const cable = transducer.startsWith('PRX') ? 'TST' : 'TSP';
  return `
        chain:
          transducer: ${transducer}
          mount: stud
          cable: ${cable}
          cable-length: { value: ${metres} m, status: measured, source: walked on the tray }
          input: ${input}`;
}

function barred(transducer, barrier, tag, input, draw) {
  return `
        chain:
          transducer: ${transducer}
          mount: stud
          cable: TSP
          cable-length: { value: ${draw.whole(110, 160)} m, status: measured, source: walked on the tray }
          in-line:
            - part: ${barrier}
              tag: ${tag}
              cable: TSP
              cable-length: { value: ${draw.whole(20, 40)} m, status: measured, source: inside the instrument building }
          input: ${input}`;
}

function wiring(draw) {
  return `
        wiring:
          screen-earthed: cabinet
          screen-on-case: no
          input-earthed: yes
          cabinet: VMS-${draw.whole(1, 9)}
          power-cable: ${draw.one('low voltage', 'converter drive')}
          power-distance: { value: ${draw.whole(60, 120)} cm, status: measured, source: walked on the tray }`;
}

/** In the order in which they follow one another, with the letters of their tags. */
export const inventedMachines = [
  ['P', pump],
  ['F', fan],
  ['C', compressor],
  ['K', turbo],
  ['P', pump],
  ['SC', screen],
];
