import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Why PDFs cannot be read back here, or nothing where they can: the Debian package poppler-utils is asked for. */
export function noPoppler(): string | undefined {
  try {
    execFileSync('pdfinfo', ['-v'], { stdio: 'ignore' });
    return undefined;
  } catch {
    return 'no pdfinfo here (Debian package poppler-utils), so no PDF is read back by an independent reader';
  }
}

/** What an independent program says of a PDF. */
export function poppler(program: 'pdfinfo' | 'pdftotext' | 'pdffonts', bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-pdf-'));
  try {
    const path = join(folder, 'document.pdf');
    writeFileSync(path, bytes);
    const parameters = program === 'pdftotext' ? ['-layout', path, '-'] : [path];
    return execFileSync(program, parameters, {
      encoding: 'utf8',
      maxBuffer: 64_000_000,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Texts compared without their spaces: a name may be broken over two lines of a cell. */
export function closed(text: string): string {
  return text.replace(/[\s\u00a0\u200b\u2007\u2008]+/g, '');
}
