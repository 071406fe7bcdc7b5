/** Several threads that plan lines at the same time. */
import { Worker } from 'node:worker_threads';
import { jsonText } from '../base/clean-text.js';
import type { BatchLine, BatchResult } from './batch-line.js';
import type { WorkerSettings } from './batch-worker.js';
import { EXIT } from './io.js';
import { BATCH_WORKER } from './paths.js';

export interface BatchPool {
  plan(line: BatchLine): Promise<BatchResult>;
  close(): Promise<void>;
}

export function openPool(count: number, settings: WorkerSettings): BatchPool {
  const lanes = Array.from({ length: count }, () => openLane(settings));
  return {
    plan: (line) => {
      const freest = lanes.reduce((best, lane) => (lane.waiting() < best.waiting() ? lane : best));
      return freest.plan(line);
    },
    close: async () => {
      await Promise.all(lanes.map((lane) => lane.close()));
    },
  };
}

/** One thread; it answers in the order in which it is asked. */
function openLane(workerData: WorkerSettings) {
  const worker = new Worker(BATCH_WORKER, { workerData });
  const asked: { readonly line: number; readonly done: (result: BatchResult) => void }[] = [];
  let broken: string | undefined;
  const fail = (message: string): void => {
    broken = message;
    for (const { line, done } of asked.splice(0)) done(failedLine(line, message));
  };
  worker.on('message', (result: BatchResult) => asked.shift()?.done(result));
  worker.on('error', (error: Error) => fail(error.message));
  return {
    waiting: () => (broken === undefined ? asked.length : Number.POSITIVE_INFINITY),
    plan: (line: BatchLine): Promise<BatchResult> =>
      broken === undefined
        ? new Promise((done) => {
            asked.push({ line: line.line, done });
            worker.postMessage(line);
          })
        : Promise.resolve(failedLine(line.line, broken)),
    close: () => worker.terminate(),
  };
}

const failedLine = (line: number, message: string): BatchResult => ({
  isPlan: false,
  json: jsonText({
    line,
    error: { code: EXIT.unexpected, message: `A thread broke down: ${message}` },
  }),
});
