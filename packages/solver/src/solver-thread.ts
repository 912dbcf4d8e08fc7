import { parentPort, workerData } from 'node:worker_threads';
import { solve, type Task } from './solve.ts';

parentPort?.postMessage(await solve(workerData as Task));
