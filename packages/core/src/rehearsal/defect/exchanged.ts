/** Two channels of a set exchanged, as X and Y or two bearings are at a junction box. What a channel is called stays. */
export function exchanged<T>(records: readonly T[], first: number, second: number): readonly T[] {
  const [a, b] = [records[first], records[second]];
  return records.map((each, index) => (index === first ? (b ?? each) : index === second ? (a ?? each) : each));
}
