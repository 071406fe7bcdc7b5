/** A thread that plans lines of a batch, one after the other. Started by batch-pool.ts. */
import { parentPort, workerData } from 'node:worker_threads';
import type { IsoDate } from '../base/dates.js';
import type { PriceList } from '../planner/price-list.js';
import type { OwnClimate } from '../rules/pack.js';
import { type BatchLine, planLine } from './batch-line.js';
import { loadPack } from './load-pack.js';

export interface WorkerSettings {
  readonly packFolder: string | undefined;
  readonly ownClimate: OwnClimate | undefined;
  readonly today: IsoDate;
  readonly assumeAll: boolean;
  readonly prices: PriceList | undefined;
}

const { packFolder, ownClimate, ...rest } = workerData as WorkerSettings;
const settings = { ...rest, pack: { ...(await loadPack(packFolder)), ownClimate } };
parentPort?.on('message', (line: BatchLine) => parentPort?.postMessage(planLine(line, settings)));
