import { burst } from './burst.ts';
import { line } from './line.ts';
import type { Observable } from './observable.ts';
import { overall } from './overall.ts';
import { position } from './position.ts';

/** Every way of looking at a motion. */
export const observables: readonly Observable[] = [line, overall, burst, position];
