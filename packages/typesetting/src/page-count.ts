import { Broken } from '@soundpost/core';

/**
 * How many pages a PDF of ours has. The root of its page tree counts all of them (ISO 32000-1:2008, 7.7.3; from memory),
 * and stands in plain text, since PDF/A-2b of this typesetter packs no objects together.
 */
export function pageCount(pdf: Uint8Array): number {
  const text = new TextDecoder('latin1').decode(pdf);
  const counts = [...text.matchAll(/\/Type\s*\/Pages\s*\/Count\s+(\d+)/g)].map((each) => Number(each[1]));
  if (counts.length === 0) throw new Broken('a PDF of ours says how many pages it has', { bytes: pdf.length });
  return Math.max(...counts);
}
