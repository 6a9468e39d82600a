/** The account of a flight beside the page: one flight at a time, and a newer question ends an older one between two. */
import { buildSkill, calcFrames, flySkill, frameTimes, parseSkill, stepTiltAccount } from '../../sim/index.ts';
import type { AccountReply, AccountRequest } from './account-messages.ts';
import { tellSight } from './account-sight.ts';

const tell = (reply: AccountReply): void => postMessage(reply);
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
/** as the page's own frames */
const RATE_HZ = 120;
const MOST_FRAMES = 300;

let asked = 0;

async function answer({ id, file, athlete, shapes, at, tiltOnly }: AccountRequest): Promise<void> {
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const flight = flySkill(skill);
  const steps = stepTiltAccount(skill, { flight, at });
  for (;;) {
    await breathe();
    if (id !== asked) return;
    const step = steps.next();
    if (step.done) {
      tell({ id, kind: 'tilt', account: step.value });
      break;
    }
    tell({ id, kind: 'progress', progress: step.value });
  }
  if (tiltOnly) return;
  await breathe();
  if (id !== asked) return;
  const frames = calcFrames(flight, frameTimes(flight.duration, Math.min(RATE_HZ, MOST_FRAMES / flight.duration)));
  tell({ id, kind: 'sight', told: tellSight(flight, frames) });
}

addEventListener('message', ({ data }: MessageEvent<AccountRequest>) => {
  asked = data.id;
  answer(data).catch((error: unknown) => {
    tell({ id: data.id, kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  });
});
