/** The start of the page: joins the rooms and mounts the page. */
import { render } from 'solid-js/web';
import './app.css';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { getStorage, openKeeper } from '../document/keep.ts';
import { claimName, newName } from '../document/keep-claim.ts';
import { openRecords } from '../document/keep-store.ts';
import { makeShelf } from '../document/shelf.ts';
import { makeDrafting } from '../engine/draft.ts';
import { makeEngine } from '../engine/engine.ts';
import { posing } from '../engine/pose.ts';
import { makeAskRelease } from '../engine/release.ts';
import { stagePictures } from '../pictures/stage.ts';
import { App } from './layout/app.tsx';
import { tools } from './layout/tools/tool-list.ts';
import type { Services } from './services.ts';
import { shelfTexts } from './shelf-words.ts';

/** The skill that the bench opens with. */
const FIRST = 'back-straight-full';

const engine = makeEngine({ athletes, shapes }, makeAskRelease(shapes));
const keeper = await openKeeper({
  tab: getStorage('sessionStorage'),
  local: getStorage('localStorage'),
  store: openRecords('shapeflight-sessions'),
  claim: claimName,
  now: Date.now,
  newName,
  cutShort: shelfTexts.cutShort,
});
const demos = Object.entries(skills).map(([id, file]) => ({ id, file }));
const services: Services = {
  flying: engine,
  posing,
  drafting: makeDrafting(),
  pictures: stagePictures,
  presets: {
    first: skills[FIRST] ?? demos[0].file,
    shapes,
    skills: demos,
    athletes: Object.entries(athletes).map(([id, athlete]) => ({ id, athlete })),
  },
  keeper,
  shelf: makeShelf({
    store: openRecords('shapeflight-shelf'),
    now: Date.now,
    newName,
    channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel('shapeflight.shelf') : undefined,
  }),
  load: {
    print: async () => (await import('../pictures/print-picture.ts')).printing,
    accounting: async () => (await import('../engine/account.ts')).makeAccounting(shapes),
    asking: async () => (await import('../engine/ask.ts')).makeAsking({ athletes, shapes }),
    comparing: async () => (await import('../engine/compare.ts')).makeComparing(engine),
    contacting: async () => {
      const [{ makeContacting }, { wholePictures }] = await Promise.all([
        import('../engine/contact.ts'),
        import('../pictures/whole-picture.ts'),
      ]);
      return { engine: makeContacting(shapes), pictures: wholePictures };
    },
    estimating: async () => (await import('../engine/estimate.ts')).makeEstimating(shapes),
  },
  tools: tools.map(({ name }) => name),
};

// a flight is the first that is seen: what comes before it is waited for
await engine.ready(keeper.kept?.history.doc ?? services.presets.first);

const root = document.getElementById('root');
if (root) render(() => <App services={services} />, root);
