import type { ByteSource } from '@soundpost/files';

/** A file that is read in pieces, until it is closed. */
export interface OpenFile extends ByteSource {
  close(): Promise<void>;
}

/** A workbench to be opened. */
export interface WantedWorkbench {
  readonly plant: string;
  /** 0 for any that is free. */
  readonly port: number;
  /** Where the catalogue that ships stands. */
  readonly genericCatalogue: string;
  /** The folder of the built page. */
  readonly page: string;
}

/** How many of how many pieces of work are done. */
export interface Through {
  readonly done: number;
  readonly of: number;
}

/** What a file holds, whole or piece by piece. */
export type Content = string | Uint8Array | Iterable<string>;

/** Everything a command may do to the world, passed in: a test gives it a world of its own. */
export interface Surroundings {
  /** The bytes of a file. Throws Refusal in words. */
  readBytes(path: string): Promise<Uint8Array>;
  /** Opens a file of any size to be read in pieces. Throws Refusal in words. */
  openFile(path: string): Promise<OpenFile>;
  /** Writes a file as a whole and makes its folder where there is none. Throws Refusal in words. */
  writeFile(
    path: string,
    content: Content,
    /** `from` is what is to be replaced: where something else stands there by then, it stays. */
    replacing: { readonly overwrite: boolean; readonly from?: Uint8Array },
  ): Promise<void>;
  /**
   * Fills a folder under another name, which then takes the place of what stands there, as a whole or not at all.
   * `listing` is the file in it that lists what belongs to it; the answer is where anything else was put. Throws Refusal
   * in words.
   */
  writeFolder(
    folder: string,
    listing: string,
    fill: (staged: string) => Promise<'replace' | 'keep'>,
  ): Promise<string | undefined>;
  /** Whether a file or folder may be written. */
  canWrite(path: string): Promise<boolean>;
  /** The first line a program prints, or nothing where it does not run. */
  firstLineOf(program: string, parameters: readonly string[]): Promise<string | undefined>;
  /** Serves the workbench, says by itself where, and settles when it has ended. Throws Refusal in words. */
  workbench(wanted: WantedWorkbench): Promise<void>;
  /** Says what is being done, for whoever waits longer than a moment, and how far it is where that is known. */
  step(what: string, through?: Through): void;
  now(): Date;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Version of the machine that runs this, as it calls itself: `v20.20.2`. */
  readonly nodeVersion: string;
  /** The folder that holds `packages`, `examples` and the rest. */
  readonly root: string;
}

export function pathIn(folder: string, ...names: readonly string[]): string {
  return [folder.replace(/[/\\]+$/, ''), ...names].join('/');
}

/** The folder a path stands in; '.' where it names none. */
export function folderOf(path: string): string {
  const cut = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
  return cut < 0 ? '.' : path.slice(0, cut) || '/';
}

export function isAbsolutePath(path: string): boolean {
  return /^(?:\/|\\\\|[A-Za-z]:[/\\])/.test(path);
}
