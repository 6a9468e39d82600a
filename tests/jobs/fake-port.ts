/** A worker in the hands of a test: it keeps what it is sent, and answers when the test says so. */
import type { FromWorker, JobPort, ToWorker } from '../../src/jobs/message.ts';

export interface FakePort extends JobPort {
  readonly sent: ToWorker[];
  readonly pieces: () => Extract<ToWorker, { kind: 'piece' }>[];
  isClosed: boolean;
  tell(message: FromWorker): void;
  fail(reason: string): void;
}

export function makeFakePort(): FakePort {
  let onMessage: (message: FromWorker) => void = () => {};
  let onFault: (reason: string) => void = () => {};
  const sent: ToWorker[] = [];
  const port: FakePort = {
    sent,
    pieces: () => sent.filter((m) => m.kind === 'piece'),
    isClosed: false,
    post: (message) => {
      sent.push(message);
    },
    listen: (message, fault) => {
      onMessage = message;
      onFault = fault;
    },
    close: () => {
      port.isClosed = true;
    },
    tell: (message) => onMessage(message),
    fail: (reason) => onFault(reason),
  };
  return port;
}
