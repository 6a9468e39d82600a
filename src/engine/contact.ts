/** Whole skills from a worker: before and after the air. A newer question silences the older one. */
import type { Athlete, ShapeData, SkillFile } from '../../sim/index.ts';
import type { ContactReply, ContactRequest, LateTold, WholeTold, WindowTold } from './contact-messages.ts';

export interface ContactListener {
  /** of the file that was asked about: while a hand drags, an older one than the last */
  whole(told: WholeTold, of: SkillFile): void;
  window(told: WindowTold | undefined): void;
  late(told: LateTold | undefined): void;
  failed(reason: string): void;
}

export interface Contacting {
  /** `study`: the release window and the late hand too. Gives the way to silence it */
  ask(file: SkillFile, athlete: Athlete, study: boolean, listener: ContactListener): () => void;
}

export function makeContacting(shapes: Readonly<Record<string, ShapeData>>): Contacting {
  let worker: Worker | undefined;
  let last = 0;
  let busy = false;
  let listening: ContactListener | undefined;
  let waiting: ContactRequest | undefined;
  let sent: ContactRequest | undefined;
  const send = (request: ContactRequest): void => {
    worker ??= start();
    busy = true;
    sent = request;
    worker.postMessage(request);
  };
  const next = (): void => {
    busy = false;
    if (!waiting) return;
    const request = waiting;
    waiting = undefined;
    send(request);
  };
  const start = (): Worker => {
    const made = new Worker(new URL('./contact-worker.ts', import.meta.url), { type: 'module' });
    made.addEventListener('message', ({ data }: MessageEvent<ContactReply>) => {
      const of = sent?.id === data.id ? sent.file : undefined;
      if (data.kind === 'whole' || data.kind === 'failed') next();
      // while a hand drags, an older answer is better than none
      if (data.id !== last && data.kind !== 'whole') return;
      if (!listening) return;
      if (data.kind === 'whole') {
        if (of) listening.whole(data.told, of);
      } else if (data.kind === 'window') listening.window(data.told);
      else if (data.kind === 'late') listening.late(data.told);
      else listening.failed(data.reason);
    });
    made.addEventListener('error', (event) => {
      listening?.failed(event.message || 'the worker did not start');
      worker = undefined;
      next();
    });
    return made;
  };
  return {
    ask: (file, athlete, study, listener) => {
      last += 1;
      const id = last;
      listening = listener;
      const request = { id, file, athlete, shapes, study };
      if (busy) waiting = request;
      else send(request);
      return () => {
        if (id === last) listening = undefined;
      };
    },
  };
}
