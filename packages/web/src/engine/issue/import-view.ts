import {
  type HandedIn,
  readEdited,
  type StatedTexts,
  type Understanding,
  understanding,
} from '@soundpost/commands/pure';
import { Refusal } from '@soundpost/core';
import type { Edit } from '@soundpost/files';

/** What an edited table would make of the plant; nothing is changed by looking at it. */
export type ImportView =
  | { readonly refused: string }
  | (Pick<
      Understanding['understood'],
      'kind' | 'carriesExported' | 'cells' | 'rowsMissing' | 'headsUnknown' | 'headsMissing'
    > & {
      readonly refused: undefined;
      readonly edits: readonly Edit[];
      readonly exportedIn: Understanding['exportedIn'];
      readonly tabsNotRead: readonly string[];
    });

export interface ImportAsked extends Pick<HandedIn, 'file' | 'decimal' | 'exportedFrom'> {
  readonly bytes: Uint8Array;
}

export async function importView(texts: StatedTexts, { bytes, ...asked }: ImportAsked): Promise<ImportView> {
  try {
    const edited = await readEdited(bytes, asked.file);
    const { understood, edits, exportedIn, tabsNotRead } = await understanding(texts, { ...asked, edited });
    return { ...understood, refused: undefined, edits, exportedIn, tabsNotRead };
  } catch (error) {
    if (error instanceof Refusal) return { refused: error.message };
    throw error;
  }
}
