/** A file to be made, by its path from the root of the checkout. */
export interface NewFile {
  readonly path: string;
  readonly content: string;
}

/** A list to be longer by one line. */
export interface ListEdit {
  readonly path: string;
  edited(text: string): string;
}

/** The names a thing goes by: `shaft-rider` in files and lists, `shaftRider` in code, `Shaft rider` for people. */
export interface Names {
  readonly kebab: string;
  readonly camel: string;
  readonly title: string;
}

/** A kind of thing that can be begun: its file, its test, and its one line in a list. */
export interface Scaffold {
  readonly word: string;
  readonly meaning: string;
  /** The name it exports, `shaftRider`: what its list must not hold yet. */
  files(names: Names): readonly NewFile[];
  lists(names: Names): readonly ListEdit[];
}

export function namesOf(kebab: string): Names {
  const camel = kebab.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
  const title = kebab.replaceAll('-', ' ');
  return { kebab, camel, title: title.slice(0, 1).toUpperCase() + title.slice(1) };
}
