/** The start of the page: joins the rooms and mounts the page. */
import { createSignal } from 'solid-js';
import { render } from 'solid-js/web';
import './app.css';
import { athletes, first, shapes } from '../../presets/start.ts';
import type { SkillFile } from '../../sim/index.ts';
import { own } from '../../sim/math/own.ts';
import { getStorage, type Keeper, openKeeper } from '../document/keep.ts';
import { claimName, hasLocks, newName } from '../document/keep-claim.ts';
import { openRecords } from '../document/keep-store.ts';
import { makeShelf } from '../document/shelf.ts';
import { makeDrafting } from '../engine/draft.ts';
import { makeEngine } from '../engine/engine.ts';
import { makeFarFlights } from '../engine/far-flight.ts';
import { posing } from '../engine/pose.ts';
import { makeAskRelease } from '../engine/release.ts';
import { stagePictures } from '../pictures/stage.ts';
import { readAddress, withoutSkill } from './address.ts';
import { App } from './layout/app.tsx';
import { loadFirstLayout } from './layout/layouts.ts';
import { tools } from './layout/tools/tool-list.ts';
import { loadPart, onPartFailed } from './load-part.ts';
import type { PresetSkill, Services } from './services.ts';
import { shelfTexts } from './shelf-words.ts';

/** The skill that the bench opens with. */
const FIRST = 'arms-in-spin';
/** What comes before the first flight is waited for so long, ms; then the page is shown without it. */
const FIRST_WAIT_MS = 5000;
/** A database that is slow is waited for so long, ms; then the page opens without it, and shows what was kept when it comes. */
const DATABASE_WAIT_MS = 700;
/** Letters of another width would move what is shown: the typeface, asked for by the page itself, is waited for so long, ms. */
const TYPE_WAIT_MS = 800;
const TYPE = '450 14px "Radio Canada Variable"';

const engine = makeEngine({ athletes, shapes }, makeAskRelease(shapes), makeFarFlights(shapes));
const [newVersion, setNewVersion] = createSignal<() => void>();
const [demos, setDemos] = createSignal<readonly PresetSkill[]>([{ id: FIRST, file: first }]);
/** The shelf of ready skills comes when it is first looked at. */
let isShelfAsked = false;
function loadShelf(): void {
  if (isShelfAsked) return;
  isShelfAsked = true;
  import('../../presets/index.ts').then(
    ({ catalogue, chains, skills }) =>
      setDemos(catalogue.map(({ id, ...about }) => ({ id, file: skills[id] ?? chains[id], about }))),
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
const loadFilm = loadPart(
  () => import('../pictures/film-pictures.ts'),
  (m) => m.makeFilmParts(shapes, loadPart),
);
/** The ready skill that the address asks for. */
async function findAsked(): Promise<SkillFile | undefined> {
  const { skill } = readAddress(location.search);
  if (skill === undefined) return undefined;
  try {
    const { chains, skills } = await import('../../presets/index.ts');
    history.replaceState(null, '', withoutSkill(location.href));
    return own(skills, skill) ?? own(chains, skill);
  } catch {
    // they did not come: the page opens, and a reload asks again
    return undefined;
  }
}

const servicesWith = (keeper: Keeper, asked: SkillFile | undefined): Services => ({
  flying: engine,
  posing,
  drafting: makeDrafting(),
  pictures: stagePictures,
  presets: {
    first: asked ?? first,
    asked,
    standIn: first,
    shapes,
    get skills() {
      loadShelf();
      return demos();
    },
    athletes: Object.entries(athletes).map(([id, athlete]) => ({ id, athlete })),
  },
  newVersion,
  keeper,
  shelf: makeShelf({
    store: openRecords('shapeflight-shelf'),
    now: Date.now,
    newName,
    channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel('shapeflight.shelf') : undefined,
    migrate: engine.migrate,
  }),
  load: {
    large: loadPart(
      () => import('../pictures/large-picture.ts'),
      (m) => m.largePictures,
    ),
    print: loadPart(
      () => import('../pictures/print-picture.ts'),
      (m) => m.printing,
    ),
    moving: loadPart(
      () => import('../moving-picture/moving-pictures.ts'),
      (m) => m.movingPictures,
    ),
    paper: loadPart(
      () => import('../paper/paper.ts'),
      (m) => m.paper,
    ),
    accounting: loadPart(
      () => import('../engine/account.ts'),
      (m) => m.makeAccounting(shapes),
    ),
    asking: loadPart(
      () => import('../engine/ask.ts'),
      (m) => m.makeAsking({ athletes, shapes }),
    ),
    filing: loadPart(
      () => import('../engine/read-files.ts'),
      (m) => m.filing,
    ),
    filming: loadFilm,
    fixing: loadPart(
      () => import('../engine/fix.ts'),
      (m) => m.makeFixing({ athletes, shapes }),
    ),
    classing: loadPart(
      () => import('../engine/class.ts'),
      (m) => m.makeClassing(shapes),
    ),
    clip: async () => (await loadFilm()).clip(),
    comparing: loadPart(
      () => import('../engine/compare.ts'),
      (m) => m.makeComparing(engine, shapes),
    ),
    contacting: async () => {
      const [engine, pictures] = await Promise.all([loadContactEngine(), loadWholePictures()]);
      return { engine, pictures };
    },
    handing: loadPart(
      () => import('../engine/handing.ts'),
      (m) => m.handing,
    ),
    estimating: loadPart(
      () => import('../engine/estimate.ts'),
      (m) => m.makeEstimating(shapes),
    ),
    reading: loadPart(
      () => import('../engine/read-skill.ts'),
      (m) => m.skillReading,
    ),
    recording: async () => (await loadFilm()).recording(),
    sensing: loadPart(
      () => import('../engine/conditioning.ts'),
      (m) => m.makeSensing(shapes),
    ),
    trying: loadPart(
      () => import('../engine/try.ts'),
      (m) => m.makeTrying({ athletes, shapes }),
    ),
  },
  tools: tools.map(({ name }) => name),
});

const after = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** No await of this module itself: late parts import from its file, and would wait for it while it waits for them. */
async function start(): Promise<void> {
  // on its way while what was kept is read and flown
  const coming = loadFirstLayout();
  const lettering = Promise.race([document.fonts.load(TYPE).catch(() => []), after(TYPE_WAIT_MS)]);
  const keeper = await openKeeper({
    tab: getStorage('sessionStorage'),
    local: getStorage('localStorage'),
    store: openRecords('shapeflight-sessions'),
    claim: claimName,
    holdsNames: hasLocks(),
    now: Date.now,
    patience: () => after(DATABASE_WAIT_MS),
    newName,
    migrate: engine.migrate,
    cameBefore: shelfTexts.cameBefore,
    cutShort: shelfTexts.cutShort,
  });
  const services = servicesWith(keeper, await findAsked());
  // a flight is the first that is seen: what comes before it is waited for
  await Promise.race([engine.ready(keeper.kept?.history.doc ?? services.presets.first), after(FIRST_WAIT_MS)]);
  await lettering;

  const layout = await coming;
  const root = document.getElementById('root');
  if (root) {
    // what it says until then (index.html)
    root.textContent = '';
    render(() => <App services={services} layout={layout} />, root);
  }
  // after the first picture
  void import('../offline/register.ts').then(({ keepOffline }) =>
    keepOffline((take) => setNewVersion(() => take), onPartFailed),
  );
}

start().catch((error: unknown) => {
  document.documentElement.dataset.start = 'failed';
  throw error;
});
