import { expose } from 'comlink';
import { RehearsalEngine } from './rehearsal-engine.ts';

expose(new RehearsalEngine());
