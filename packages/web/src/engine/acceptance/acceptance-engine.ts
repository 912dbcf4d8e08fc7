import {
  acceptanceFile,
  acceptanceJson,
  bytesOf,
  type Content,
  contentHashOf,
  measuredSession,
  type Surroundings,
  seed,
} from '@soundpost/commands/pure';
import {
  acceptance,
  design as designOf,
  type Field,
  fieldOf,
  isOptional,
  kebab,
  occasionKinds,
  type Plant,
  Refusal,
  type Showing,
} from '@soundpost/core';
import { bytesOfBlob, openRecording } from '@soundpost/files';
import type { PlantOnDisk } from '@soundpost/server/protocol';
import { plantFrom } from '../read-plant.ts';
import { acceptanceView } from './acceptance-view.ts';
import type {
  AcceptanceAnswer,
  AcceptanceChoices,
  Asked,
  ChannelFound,
  FileFound,
  RecordingTyped,
} from './acceptance-views.ts';
import { recordsText } from './records-text.ts';
// Loaded with the engine: the server may be gone when a file is hashed.
import './streamed-hash.ts';

const recordsName = 'records.yaml';

/** Accepts installed chains from files chosen in the page. Nothing of them leaves the machine: they are read where they lie. */
export class AcceptanceEngine {
  #plant: Plant | undefined;
  #showing: Showing = {};
  #disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'> | undefined;
  #files = new Map<string, File>();

  open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>, showing: Showing): AcceptanceChoices {
    this.#disk = disk;
    this.#showing = showing;
    this.#plant = plantFrom(disk.text, disk.path, disk.catalogues);
    return {
      points: this.#plant.machines.flatMap((machine) =>
        machine.points.map(({ statement }) => `${machine.name}/${statement.name}`),
      ),
      occasions: occasionKinds.map(({ kind, name, how, dataSheet }) => ({
        kind,
        name,
        how,
        fields: Object.entries(dataSheet).map(([key, entry]) => {
          const { meaning, example, schema } = fieldOf(entry as never) as Field<unknown>;
          const options = Array.isArray(schema.enum) ? schema.enum.map(String) : [];
          return { key: kebab(key), meaning, example, options, optional: isOptional(entry as never) };
        }),
      })),
    };
  }

  /** Reads the heads of files beside those that were chosen before. */
  async look(files: readonly File[]): Promise<readonly FileFound[]> {
    for (const file of files) this.#files.set(file.name, file);
    return Promise.all([...this.#files.values()].map((each) => lookedAt(each)));
  }

  forget(): void {
    this.#files.clear();
  }

  async accept(
    typed: readonly RecordingTyped[] | undefined,
    date: string,
    tell: (words: string) => void,
  ): Promise<AcceptanceAnswer> {
    try {
      const path = typed === undefined ? this.#recordsFile() : recordsName;
      const { surroundings, written } = this.#surroundings(
        typed === undefined ? undefined : recordsText('Acceptance from recordings', typed),
        tell,
      );
      const recorded = await measuredSession(surroundings, path);
      tell('comparing with the design');
      const { text, path: from, catalogues } = this.#disk!;
      const accepted = acceptance(designOf(this.#plant!, seed), recorded, seed);
      const texts = new Map(Object.entries(catalogues).map(([name, each]) => [name, each.text]));
      tell('setting the acceptance file');
      await acceptanceFile(surroundings, {
        accepted,
        json: acceptanceJson(accepted) as object,
        contentHash: await contentHashOf(bytesOf({ from, plant: text, catalogues: texts })),
        records: path,
        out: 'acceptance.html',
        date: date === '' ? undefined : date,
        manner: { showing: this.#showing, width: 80 } as never,
      });
      const records = new TextDecoder().decode(await surroundings.readBytes(path));
      return { accepted: acceptanceView(accepted, this.#showing, written.get('acceptance.html') ?? '', records) };
    } catch (error) {
      if (error instanceof Refusal) return { refused: error.message };
      throw error;
    }
  }

  #recordsFile(): string {
    const name = [...this.#files.keys()].find((each) => /\.ya?ml$/i.test(each));
    if (name === undefined) throw new Refusal({ read: 'the chosen files', expected: 'a records file among them' });
    return name;
  }

  /** The chosen files by their names alone: a page is not told the folders they lie in. */
  #surroundings(records: string | undefined, tell: (words: string) => void) {
    const written = new Map<string, string>();
    const fileAt = (path: string): File => {
      const name = path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
      const file = this.#files.get(name);
      if (file === undefined) throw new Refusal({ read: name, expected: 'a file among those that were chosen' });
      return file;
    };
    const surroundings = {
      readBytes: async (path: string) =>
        path === recordsName && records !== undefined
          ? new TextEncoder().encode(records)
          : new Uint8Array(await fileAt(path).arrayBuffer()),
      openFile: async (path: string) => ({ ...bytesOfBlob(fileAt(path)), close: async () => {} }),
      writeFile: async (path: string, content: Content) => {
        written.set(path, whole(content));
      },
      step: (words: string, through?: { readonly done: number; readonly of: number }) =>
        tell(through === undefined ? words : `${words}: ${through.done} of ${through.of}`),
    } as unknown as Surroundings;
    return { surroundings, written };
  }
}

function whole(content: Content): string {
  if (typeof content === 'string') return content;
  return content instanceof Uint8Array ? new TextDecoder().decode(content) : [...content].join('');
}

async function lookedAt(file: File): Promise<FileFound> {
  const { name } = file;
  if (/\.ya?ml$/i.test(name)) return { name, is: 'records file', words: 'names recordings and answers', channels: [] };
  if (/\.wav\.json$/i.test(name)) return { name, is: 'facts', words: 'facts beside a WAV', channels: [] };
  try {
    const { recording } = await openRecording(bytesOfBlob(file), name);
    const channels = recording.channels.map((each, index): ChannelFound => {
      const asks: Asked[] = (['rate', 'unit', 'gain', 'coupling'] as const).filter((fact) => !each[fact].known);
      const says = [
        each.rate.known ? `${each.rate.value} samples a second` : undefined,
        each.unit.known ? `in ${each.unit.value.written}` : undefined,
        each.sensitivity.known ? each.sensitivity.value : undefined,
      ];
      return { number: index + 1, name: each.of, says: says.filter((one) => one !== undefined).join(', '), asks };
    });
    return { name, is: 'recording', words: recording.form, channels };
  } catch (error) {
    if (error instanceof Refusal) return { name, is: 'refused', words: error.message, channels: [] };
    throw error;
  }
}
