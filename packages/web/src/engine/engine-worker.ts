import { expose } from 'comlink';
import { Engine } from './engine.ts';

expose(new Engine());
