/** A first draft beside the page: it takes from a tenth of a second to several, and the page stays free meanwhile. */
import { draftOfCode, draftSkill, fileOfDraft, readAthlete, shapeInRadians } from '../../sim/index.ts';
import type { DraftReply, DraftRequest } from './draft-messages.ts';

const tell = (reply: DraftReply): void => postMessage(reply);
addEventListener('message', ({ data }: MessageEvent<DraftRequest>) => {
  try {
    const shapes = Object.fromEntries(Object.entries(data.shapes).map(([id, shape]) => [id, shapeInRadians(shape)]));
    const draft = draftSkill(draftOfCode(data.code, data.direction), {
      athlete: readAthlete(data.athlete),
      shapes,
      onFlight: (n) => tell({ kind: 'flights', n }),
    });
    tell({ kind: 'done', file: fileOfDraft(draft, data.ref), falls: draft.falls });
  } catch (error) {
    const { name, message } = error instanceof Error ? error : new Error(String(error));
    tell({ kind: 'failed', name, reason: message });
  }
});
