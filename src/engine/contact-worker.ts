/** Whole skills beside the page: swing, flight, landing; then, when asked, the studies of the release. */

import { buildSkill, calcFlightEnd, flyWhole, loadContact, parseSkill } from '../../sim/index.ts';
import { REV } from '../../sim/math/angles.ts';
import type { ContactReply, ContactRequest } from './contact-messages.ts';
import { tellLate, tellWhole, tellWindow } from './contact-told.ts';

const tell = (reply: ContactReply): void => postMessage(reply);
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

let asked = 0;

async function answer({ id, file, athlete, shapes, study }: ContactRequest): Promise<void> {
  const contact = await loadContact();
  if (id !== asked) return;
  const skill = buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes }));
  const whole = flyWhole(skill, contact);
  tell({ id, kind: 'whole', told: tellWhole(whole, contact) });
  if (!study) return;
  await breathe();
  if (id !== asked) return;
  tell({ id, kind: 'window', told: tellWindow(whole) });
  await breathe();
  if (id !== asked) return;
  const twistsOf = (one: typeof whole): number => Math.abs(calcFlightEnd(one.flight).twist) / REV;
  tell({ id, kind: 'late', told: tellLate(skill, contact, twistsOf) });
}

addEventListener('message', ({ data }: MessageEvent<ContactRequest>) => {
  asked = data.id;
  // a newer question in the queue ends this one before it starts
  void breathe().then(() => {
    if (data.id !== asked) return;
    answer(data).catch((error: unknown) => {
      tell({ id: data.id, kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
    });
  });
});
