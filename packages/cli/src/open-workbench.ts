import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { WantedWorkbench } from '@soundpost/commands';
import { Refusal } from '@soundpost/core';

/**
 * Serves the workbench until Ctrl-C, prints the address that opens it, and another one for every Enter. A second Ctrl-C
 * ends at once.
 */
export async function openWorkbench(wanted: WantedWorkbench): Promise<void> {
  // Only this command pays for loading the server.
  const { howToBuild, workbench } = await import('@soundpost/server');
  if (!existsSync(join(wanted.page, 'index.html'))) {
    throw new Refusal({ read: wanted.page, expected: 'the built page of the workbench', suggestion: howToBuild });
  }
  const opened = await workbench(wanted);
  const tell = (): void => void process.stdout.write(`${opened.newAddress()}\n`);
  tell();
  const lines = createInterface({ input: process.stdin });
  lines.on('line', tell);
  await asked();
  lines.close();
  process.stdin.unref();
  await opened.close();
}

function asked(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
}
