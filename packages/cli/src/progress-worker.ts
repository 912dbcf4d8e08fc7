import { writeSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';

const firstAfter = 1000;
const again = 1000;
const began = Date.now();
let doing = '';
let shown = false;

const say = () => {
  const seconds = Math.round((Date.now() - began) / 1000);
  writeSync(2, `\r\u001b[2K… ${doing}, ${seconds} s`);
  shown = true;
};

let timer: NodeJS.Timeout = setTimeout(() => {
  say();
  timer = setInterval(say, again);
}, firstAfter);

parentPort?.on('message', (what: string | null) => {
  if (what !== null) {
    doing = what;
    return;
  }
  clearTimeout(timer);
  if (shown) writeSync(2, '\r\u001b[2K');
  parentPort?.close();
});
