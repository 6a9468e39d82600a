/**
 * A step that is made soon: its flight is flown in the next task and shown in the one after, so that neither holds the page for long. Whatever a person does
 * before that finds it made: it is made at once then.
 */
import type { Accessor } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import type { History } from '../document/history.ts';
import { inNextTask } from '../ui/frame.ts';

type Past = History<SkillFile>;

interface SoonHost {
  readonly history: Accessor<Past>;
  /** what waits is made */
  finish(): void;
  settleLater(settle: () => void): void;
  isWaiting(settle: () => void): boolean;
  change(next: Past): void;
  /** ahead, to be taken when it is shown; may throw */
  fly(next: Past): void;
}

/** What a person does; each comes here first. */
const ACTS = ['keydown', 'pointerdown', 'click', 'beforeinput', 'input', 'change', 'paste', 'drop', 'pagehide'];

export function createSoon(host: SoonHost): (step: (h: Past) => Past) => void {
  let waits: (() => void) | undefined;
  const makeNow = (): void => {
    if (waits && host.isWaiting(waits)) host.finish();
    waits = undefined;
  };
  // for as long as the page lives, and before any other listener: the document is created before the page
  for (const act of ACTS) globalThis.addEventListener?.(act, makeNow, { capture: true });
  return (step) => {
    host.finish();
    const before = host.history();
    const next = step(before);
    const make = (): void => host.change(host.history() === before ? next : step(host.history()));
    waits = make;
    host.settleLater(make);
    inNextTask(() => {
      if (!host.isWaiting(make)) return;
      try {
        host.fly(next);
      } catch {
        // said when it is shown
      }
      inNextTask(() => {
        if (host.isWaiting(make)) host.finish();
      });
    });
  };
}
