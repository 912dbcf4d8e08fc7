import type { Edit } from '@soundpost/server/protocol';

/** Where something new comes to stand: before that one, at the end where nothing is said. */
interface Placed {
  readonly before?: string;
}

/** What the page asks to be built onto a plant or a machine, or taken from it. */
export type BuildingAsked =
  | ({ readonly act: 'add machine'; readonly name: string; readonly title: string; readonly shaft: string } & Placed)
  | ({ readonly act: 'add shaft'; readonly machine: string; readonly name: string } & Placed)
  | ({
      readonly act: 'add element';
      readonly machine: string;
      readonly kind: string;
      readonly name: string;
      /** The shaft in each role; what is left empty is not named. */
      readonly shafts: Readonly<Record<string, string>>;
    } & Placed)
  | ({
      readonly act: 'add point';
      readonly machine: string;
      readonly name: string;
      readonly location: string;
      readonly direction: string;
      readonly installation: string;
    } & Placed)
  | { readonly act: 'add state'; readonly machine: string; readonly name: string; readonly at: string }
  | {
      readonly act: 'remove';
      readonly what: Removable;
      readonly machine: string;
      /** Which of the machine; of the machine itself nothing. */
      readonly name: string;
    }
  | {
      readonly act: 'rename';
      readonly what: Removable;
      readonly machine: string;
      /** Which of the machine; of the machine itself nothing. */
      readonly name: string;
      readonly to: string;
    }
  | {
      /** What a point is there to listen to; all of the train where nothing is named. */
      readonly act: 'hear';
      readonly machine: string;
      readonly point: string;
      readonly hears: readonly string[];
    }
  | {
      readonly act: 'move';
      readonly what: Movable;
      readonly machine: string;
      readonly name: string;
      readonly by: -1 | 1;
    }
  | { readonly act: 'run by'; readonly machine: string; readonly by: 'shaft' | 'line'; readonly of: string }
  | {
      readonly act: 'stand on';
      readonly machine: string;
      readonly element: string;
      readonly role: string;
      readonly shaft: string;
    };

export type Removable = 'machine' | 'shaft' | 'element' | 'point' | 'state';
export type Movable = 'shaft' | 'element' | 'point';

/** The edits that do it, and what else they do; or why it cannot be done. */
export type Built =
  | {
      readonly label: string;
      readonly edits: readonly Edit[];
      /** What goes with it; of a new name, what follows it. */
      readonly takesAlong: readonly string[];
      /** What stays and then speaks of something that is not there, or says something else. */
      readonly unsettles: readonly string[];
    }
  | { readonly refused: string };

/** A role a shaft plays at an element: what may stand there. */
export interface RoleForm {
  readonly role: string;
  readonly meaning: string;
  readonly mayBeFixed: boolean;
  readonly mayBeLeftOut: boolean;
}

/** A kind of element as it is added. */
export interface KindForm {
  readonly kind: string;
  readonly name: string;
  readonly roles: readonly RoleForm[];
}
