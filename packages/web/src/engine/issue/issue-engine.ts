import {
  bytesOf,
  type ComposedSet,
  completeDesign,
  composedSet,
  contentHashOf,
  revisionDifference,
  type StatedTexts,
  seed,
} from '@soundpost/commands/pure';
import { type Design, design as designOf, type Plant, type Showing, valueIfStated } from '@soundpost/core';
import { issuedKinds, setPage } from '@soundpost/documents/document-set';
import type { IssuedTexts, PlantOnDisk } from '@soundpost/server/protocol';
import { findingView } from '../finding-view.ts';
import { plantFrom } from '../read-plant.ts';
import type { FindingView } from '../views.ts';
import { type DifferenceView, differenceView } from './difference-view.ts';
import { type ImportAsked, type ImportView, importView } from './import-view.ts';

/** What would be issued, and what stands against it. */
export interface IssueProof {
  readonly stated: string;
  readonly contentHash: string;
  readonly blocked: boolean;
  readonly findings: readonly FindingView[];
  readonly documents: readonly {
    readonly kind: string;
    readonly title: string;
    readonly readers: string;
    readonly sheets: readonly string[];
  }[];
}

export interface ProofAsked {
  readonly documents: readonly string[] | undefined;
  readonly revision: string;
  readonly preliminary: boolean;
}

/** Composes a set as the command does, in a worker of its own: hands are answered meanwhile. */
export class IssueEngine {
  #plant: Plant | undefined;
  #design: Design | undefined;
  #texts: StatedTexts | undefined;
  #hash = '';
  #showing: Showing = {};

  async open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>, showing: Showing): Promise<void> {
    this.#showing = showing;
    this.#plant = plantFrom(disk.text, disk.path, disk.catalogues);
    this.#design = completeDesign(designOf(this.#plant, seed));
    const catalogues = new Map(Object.entries(disk.catalogues).map(([name, { text }]) => [name, text]));
    this.#texts = { from: disk.path, plant: disk.text, catalogues };
    this.#hash = await contentHashOf(bytesOf(this.#texts));
  }

  /** What changed from an issued revision to another; to the plant as it stands where no other is named. */
  difference(from: IssuedTexts, to: IssuedTexts | undefined, step: (what: string) => void): DifferenceView {
    const after = to === undefined ? this.#texts! : statedIn(to);
    return differenceView(revisionDifference(statedIn(from), after, step), this.#showing);
  }

  /** What a table that a person edited would make of the plant. */
  imported(asked: Omit<ImportAsked, 'exportedFrom'>, exportedFrom: IssuedTexts | undefined): Promise<ImportView> {
    const from = exportedFrom === undefined ? {} : { exportedFrom: statedIn(exportedFrom) };
    return importView(this.#texts!, { ...asked, ...from });
  }

  proof(asked: ProofAsked): IssueProof {
    const set = this.#set(asked);
    const every = this.#set({ ...asked, documents: undefined });
    const points = new Set(this.#design!.machines.flatMap((each) => each.points.map(({ point }) => point.of)));
    return {
      stated: valueIfStated(this.#plant!.title.values.revision) ?? '',
      contentHash: this.#hash,
      blocked: set.blocked,
      findings: set.findings
        .filter(({ weight }) => weight === 'blocks-issue' || weight === 'question')
        .map((each, index) => findingView(each, index, this.#showing, points)),
      documents: every.records.map(({ kind, title, sheets }) => ({
        kind,
        title,
        readers: issuedKinds.find((each) => each.kind === kind)!.readers,
        sheets: sheets.map((each) => each.title),
      })),
    };
  }

  /** One sheet of a document as the page for a browser has it. */
  sheet(kind: string, index: number, asked: ProofAsked): string {
    const { records, facts } = this.#set({ ...asked, documents: [kind] });
    const record = records[0];
    const sheet = record?.sheets[index];
    if (record === undefined || sheet === undefined) return '';
    const page = setPage([{ ...record, sheets: [sheet] }], facts);
    return page.slice(page.indexOf('<header class="title-block">'), page.lastIndexOf('</body>'));
  }

  #set({ documents, revision, preliminary }: ProofAsked): ComposedSet {
    const kinds = issuedKinds.filter(({ kind }) => documents === undefined || documents.includes(kind));
    return composedSet(this.#design!, {
      kinds,
      revision,
      contentHash: this.#hash,
      preliminary,
      showing: this.#showing,
    });
  }
}

function statedIn({ plant, catalogues, revision }: IssuedTexts): StatedTexts {
  return { from: `revision ${revision}`, plant, catalogues: new Map(catalogues), revision };
}
