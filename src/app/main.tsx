/** The start of the page: joins the rooms and mounts the page. */
import { createSignal } from 'solid-js';
import { render } from 'solid-js/web';
import './app.css';
import { athletes, first, shapes } from '../../presets/start.ts';
import { getStorage, openKeeper } from '../document/keep.ts';
import { claimName, hasLocks, newName } from '../document/keep-claim.ts';
import { openRecords } from '../document/keep-store.ts';
import { makeShelf } from '../document/shelf.ts';
import { makeDrafting } from '../engine/draft.ts';
import { makeEngine } from '../engine/engine.ts';
import { posing } from '../engine/pose.ts';
import { makeAskRelease } from '../engine/release.ts';
import { stagePictures } from '../pictures/stage.ts';
import { App } from './layout/app.tsx';
import { tools } from './layout/tools/tool-list.ts';
import { loadPart } from './load-part.ts';
import type { PresetSkill, Services } from './services.ts';
import { shelfTexts } from './shelf-words.ts';

/** The skill that the bench opens with. */
const FIRST = 'back-straight-full';
/** What comes before the first flight is waited for so long, ms; then the page is shown without it. */
const FIRST_WAIT_MS = 5000;

const engine = makeEngine({ athletes, shapes }, makeAskRelease(shapes));
const keeper = await openKeeper({
  tab: getStorage('sessionStorage'),
  local: getStorage('localStorage'),
  store: openRecords('shapeflight-sessions'),
  claim: claimName,
  holdsNames: hasLocks(),
  now: Date.now,
  newName,
  migrate: engine.migrate,
  cutShort: shelfTexts.cutShort,
});
const [demos, setDemos] = createSignal<readonly PresetSkill[]>([{ id: FIRST, file: first }]);
/** The shelf of ready skills comes when it is first looked at. */
let isShelfAsked = false;
function loadShelf(): void {
  if (isShelfAsked) return;
  isShelfAsked = true;
  import('../../presets/index.ts').then(
    ({ chains, skills }) => setDemos(Object.entries({ ...chains, ...skills }).map(([id, file]) => ({ id, file }))),
    () => {
      isShelfAsked = false;
    },
  );
}
const loadContactEngine = loadPart(
  () => import('../engine/contact.ts'),
  (m) => m.makeContacting(shapes),
);
const loadWholePictures = loadPart(
  () => import('../pictures/whole-picture.ts'),
  (m) => m.wholePictures,
);
const services: Services = {
  flying: engine,
  posing,
  drafting: makeDrafting(),
  pictures: stagePictures,
  presets: {
    first,
    shapes,
    get skills() {
      loadShelf();
      return demos();
    },
    athletes: Object.entries(athletes).map(([id, athlete]) => ({ id, athlete })),
  },
  keeper,
  shelf: makeShelf({
    store: openRecords('shapeflight-shelf'),
    now: Date.now,
    newName,
    channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel('shapeflight.shelf') : undefined,
    migrate: engine.migrate,
  }),
  load: {
    print: loadPart(
      () => import('../pictures/print-picture.ts'),
      (m) => m.printing,
    ),
    accounting: loadPart(
      () => import('../engine/account.ts'),
      (m) => m.makeAccounting(shapes),
    ),
    asking: loadPart(
      () => import('../engine/ask.ts'),
      (m) => m.makeAsking({ athletes, shapes }),
    ),
    comparing: loadPart(
      () => import('../engine/compare.ts'),
      (m) => m.makeComparing(engine, shapes),
    ),
    contacting: async () => {
      const [engine, pictures] = await Promise.all([loadContactEngine(), loadWholePictures()]);
      return { engine, pictures };
    },
    estimating: loadPart(
      () => import('../engine/estimate.ts'),
      (m) => m.makeEstimating(shapes),
    ),
    sensing: loadPart(
      () => import('../engine/conditioning.ts'),
      (m) => m.makeSensing(shapes),
    ),
  },
  tools: tools.map(({ name }) => name),
};

// a flight is the first that is seen: what comes before it is waited for
await Promise.race([
  engine.ready(keeper.kept?.history.doc ?? services.presets.first),
  new Promise((resolve) => setTimeout(resolve, FIRST_WAIT_MS)),
]);

const root = document.getElementById('root');
if (root) render(() => <App services={services} />, root);
