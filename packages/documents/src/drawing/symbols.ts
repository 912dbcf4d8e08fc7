import type { Mark } from './drawing.ts';

/** How a symbol came to look as it does. */
type Style = 'IEC 60617, from memory' | 'ISO 3952, from memory' | 'own';

interface DrawnSymbol {
  readonly means: string;
  readonly style: Style;
}

/**
 * Every symbol a schematic is drawn with. Those in the style of a standard were drawn from memory of it; where we know
 * of no standard symbol it is our own, and what it stands for is always written beside it.
 */
export const symbols = {
  'seismic transducer': { means: 'a mass on the element that feels it, in a housing', style: 'own' },
  'moving coil': { means: 'a coil about a magnet', style: 'own' },
  'proximity probe': { means: 'a tip before a shaft', style: 'own' },
  'detecting sensor': { means: 'a vibration comes in, one steady value leaves', style: 'own' },
  'differential transformer': { means: 'a core in three windings', style: 'own' },
  mount: { means: 'a screw in a wall, whatever holds it', style: 'own' },
  'screened cable': { means: 'two cores in a screen', style: 'own' },
  'loop supply': { means: 'a cell with its positive pole', style: 'IEC 60617, from memory' },
  resistance: { means: 'a resistor', style: 'IEC 60617, from memory' },
  'shunt-diode barrier': { means: 'a diode from the line to earth, in a frame', style: 'IEC 60617, from memory' },
  isolator: { means: 'two sides without a common wire', style: 'own' },
  'junction box': { means: 'two terminals in a frame', style: 'own' },
  'analogue input': { means: 'what comes in smooth leaves in steps', style: 'own' },
  part: { means: 'a frame around whatever the symbol in it stands for', style: 'IEC 60617, from memory' },
  terminal: { means: 'a terminal', style: 'IEC 60617, from memory' },
  junction: { means: 'conductors that are joined', style: 'IEC 60617, from memory' },
  'open end': { means: 'conductors that are kept apart', style: 'own' },
  opening: { means: 'where a conductor is opened to end a ground loop, with its number', style: 'own' },
  earth: { means: 'earth', style: 'IEC 60617, from memory' },
  'protective earth': { means: 'protective earth', style: 'IEC 60617, from memory' },
  'functional earth': { means: 'functional, noiseless earth', style: 'IEC 60617, from memory' },
  bar: { means: 'a frame of a machine or an earth bar, cut', style: 'own' },
  'case of a transducer': { means: 'the case, named in it', style: 'own' },
  'metal box': { means: 'a box around the line, named above it', style: 'own' },
  'electric machine': { means: 'a motor or generator with windings, on feet', style: 'own' },
  'rolling bearing': { means: 'rolling elements above and below the shaft', style: 'ISO 3952, from memory' },
  'fluid-film bearing': { means: 'a shell above and below the shaft', style: 'ISO 3952, from memory' },
  'toothed wheel': { means: 'a wheel with teeth, from the side', style: 'own' },
  pulley: { means: 'a wheel with a groove, from the side', style: 'own' },
  coupling: { means: 'two halves face to face', style: 'ISO 3952, from memory' },
  wheel: { means: 'an impeller or runner, from the side', style: 'own' },
  planets: { means: 'planets in a ring, from the side', style: 'own' },
  crank: { means: 'a crank with its cylinder', style: 'own' },
  eccentric: { means: 'an unbalanced mass on a shaft', style: 'own' },
  'pair of screws': { means: 'a screw rotor, from the side', style: 'own' },
  'structural mode': { means: 'a wave: nothing makes it, the structure answers to it', style: 'own' },
  'phase reference': { means: 'a probe above a mark on the shaft', style: 'own' },
  body: { means: 'an element of a kind without a symbol of its own', style: 'own' },
  'measuring point': {
    means: 'its number in a ring; a pointer up for vertical, to the right for axial, a second ring for horizontal',
    style: 'own',
  },
} as const satisfies Readonly<Record<string, DrawnSymbol>>;

export type SymbolName = keyof typeof symbols;

/** The marks of one symbol, each of them knowing of which. */
export function drawnAs(symbol: SymbolName, ...marks: readonly Mark[]): readonly Mark[] {
  return marks.map((mark) => ({ ...mark, symbol }));
}
