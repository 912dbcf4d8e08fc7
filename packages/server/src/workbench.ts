import { once } from 'node:events';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import { Refusal } from '@soundpost/core';
import { takeUnfinishedAway } from '@soundpost/store';
import { app } from './app.ts';
import { Changes } from './changes.ts';
import { Entrance } from './entrance.ts';
import { PlantFile } from './plant-on-disk.ts';

/** How long an answer under way may take once the server is to end. */
const patience = 3000;

/** What a workbench is opened for. */
export interface Wanted {
  readonly plant: string;
  /** 0 for any that is free. */
  readonly port: number;
  /** The catalogue that ships. */
  readonly genericCatalogue: string;
  /** The folder of the built page. */
  readonly page: string;
}

/** A server that runs. */
export interface Workbench {
  readonly port: number;
  /** An address that opens the workbench once; the one before it is good no longer. */
  newAddress(): string;
  /** Ends it: what was asked for is written first. */
  close(): Promise<void>;
}

/** Opens the workbench for a plant file on this machine's own address, which no other machine reaches. Throws Refusal. */
export async function workbench({ plant: path, port: wanted, genericCatalogue, page }: Wanted): Promise<Workbench> {
  const plant = new PlantFile(path, genericCatalogue);
  await plant.read();
  await takeUnfinishedAway(dirname(plant.path)).catch(() => undefined);
  const changes = new Changes(plant);
  const entrance = new Entrance();
  const ending = new AbortController();
  let port = 0;
  const routes = app({ plant, changes, entrance, page, port: () => port, ending: ending.signal });
  const server = createAdaptorServer({ fetch: routes.fetch }) as Server;
  port = await listening(server, wanted);
  await changes.start();
  return {
    port,
    newAddress: () => `http://127.0.0.1:${port}/enter?token=${entrance.newToken()}`,
    close: async () => {
      ending.abort();
      changes.stop();
      const closed = once(server, 'close');
      server.close();
      // A connection is idle once its answer is out; nobody tells, so it is asked.
      const idling = setInterval(() => server.closeIdleConnections(), 20);
      const impatient = setTimeout(() => server.closeAllConnections(), patience);
      await closed;
      clearInterval(idling);
      clearTimeout(impatient);
      await plant.idle();
    },
  };
}

async function listening(server: Server, port: number): Promise<number> {
  try {
    server.listen(port, '127.0.0.1');
    await once(server, 'listening');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    throw new Refusal({
      read: `port ${port}`,
      expected: 'a port that is free and may be used',
      suggestion: code === 'EADDRINUSE' ? 'Another program listens there.' : 'The system keeps it for itself.',
    });
  }
  return (server.address() as AddressInfo).port;
}
