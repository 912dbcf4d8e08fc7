import type { Stated } from '@soundpost/core';

/** How a value is known and where it comes from, as the file says it; empty where it says nothing. */
export interface Origin {
  readonly status: string;
  readonly source: string;
}

/** What a file says about a value, beside the value; with another value it no longer holds. */
export interface SaidOf extends Origin {
  /** Who could answer, where it is not known. */
  readonly ask: string;
  /** Whether it is believed to lie between bounds. */
  readonly bounded: boolean;
}

export const noOrigin: Origin = { status: '', source: '' };

export function hasOrigin({ status, source }: Origin): boolean {
  return status !== '' || source !== '';
}

/** What is said of a stated value; nothing where only the value stands there. */
export function saidOf(value: Stated<unknown> | undefined): SaidOf | undefined {
  if (value === undefined) return undefined;
  const said: SaidOf = value.known
    ? { status: value.status ?? '', source: value.source ?? '', ask: '', bounded: false }
    : { ...noOrigin, ask: value.ask ?? '', bounded: value.between !== undefined };
  return hasOrigin(said) || said.ask !== '' || said.bounded ? said : undefined;
}

/** The same in words: `measured, walked on the tray`. */
export function originWords(said: Origin & Partial<SaidOf>): string {
  const parts = [
    said.status,
    said.source,
    said.ask === undefined || said.ask === '' ? '' : `ask ${said.ask}`,
    said.bounded === true ? 'believed between bounds' : '',
  ];
  return parts.filter((each) => each !== '').join(', ');
}
