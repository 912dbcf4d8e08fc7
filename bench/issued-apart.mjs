// One issue in a process of its own, so that its peak memory is its own: node issued-apart.mjs PLANT OUT
import { writeSync } from 'node:fs';
import { run } from '../packages/cli/dist/main.js';

const [plant, out] = process.argv.slice(2);
const began = performance.now();
const exit = await run(['issue', plant, '--out', out]);
const seconds = (performance.now() - began) / 1000;
const { user, system } = process.cpuUsage();
const peakMiB = process.resourceUsage().maxRSS / 1024;
writeSync(3, JSON.stringify({ exit, seconds, processorSeconds: (user + system) / 1e6, peakMiB }));
process.exitCode = exit;
