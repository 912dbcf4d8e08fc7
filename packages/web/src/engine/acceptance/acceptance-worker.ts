import { expose } from 'comlink';
import { AcceptanceEngine } from './acceptance-engine.ts';

expose(new AcceptanceEngine());
