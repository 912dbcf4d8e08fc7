import { execFileSync } from 'node:child_process';
import { cpus, loadavg, release, totalmem } from 'node:os';

/** What a figure was measured on: the machine, the versions, and what else the machine was doing. */
export function circumstances() {
  const [first] = cpus();
  return {
    machine: {
      processor: first?.model ?? 'unknown',
      cores: cpus().length,
      memoryGiB: Math.round(totalmem() / 2 ** 30),
    },
    versions: { node: process.version, kernel: release(), soundpost: commit() },
    load: loadavg().map((each) => Number(each.toFixed(2))),
  };
}

/** The commit that was measured, marked where files differ from it. */
function commit() {
  try {
    return execFileSync('git', ['describe', '--always', '--dirty'], {
      cwd: import.meta.dirname,
      encoding: 'utf8',
    }).trim();
  } catch {
    return 'unknown';
  }
}
