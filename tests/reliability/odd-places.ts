/** Odd places that the page is opened in: how each is made in a test, and what must hold there. tests/browser/odd-places.spec.ts walks them. */
export interface OddPlace {
  readonly place: string;
  readonly made: string;
  readonly holds: string;
}

export const oddPlaces = {
  keptMissing: {
    place: 'a file is gone from what is kept for use without a network',
    made: 'its entry deleted from the cache',
    holds: 'the page opens from the network, and the file is kept again',
  },
  keptCut: {
    place: 'a kept file has lost its end',
    made: 'half of it put back into the cache',
    holds: 'it is not run; the whole file comes from the network and is kept again',
  },
  keptOther: {
    place: 'a kept file is something else',
    made: 'a page of HTML put in the place of a script',
    holds: 'it is not run; the script comes from the network and is kept again',
  },
  keptLost: {
    place: 'no network, and a part that the page starts with is gone',
    made: 'the entry deleted, the network cut',
    holds:
      'the page says that it has not started, what may be the cause, and that the work stays; with the network it opens',
  },
  storeThrows: {
    place: 'the store of kept files fails',
    made: 'every call of it rejected in the worker',
    holds: 'the page opens from the network',
  },
  signIn: {
    place: 'a network that asks for a password first',
    made: 'every file answered with 200 and a page of its own while a newer version is fetched',
    holds: 'nothing of it is kept, and the version before opens without a network',
  },
  latePartGone: {
    place: 'a newer build is put on the server while a page is open that no worker looks after',
    made: 'late parts answered with 404, another version in the page',
    holds: 'the tool says that it could not be opened, the newer version is offered, and the work is there after it',
  },
  firstPartGone: {
    place: 'a part that the page starts with does not arrive',
    made: 'a script of the start answered with 404',
    holds: 'the page says that it has not started, what may be the cause, and that the work stays',
  },
  noScript: {
    place: 'JavaScript is off',
    made: 'a context without it',
    holds: 'the page says that it needs it, and nothing else',
  },
  oldBrowser: {
    place: 'a browser that knows no modules',
    made: 'the script of the page taken out',
    holds: 'the page says that it has not started, and that it needs a browser of the last two years',
  },
  noWorker: {
    place: 'no workers',
    made: 'Worker taken from the page',
    holds: 'the flight is shown and edited; what is computed beside the page says in plain words that it cannot be',
  },
  workerGone: {
    place: 'the script of the workers does not arrive',
    made: 'it is answered with 404',
    holds: 'the tool says so with a way to try again, and the second try works once it is there',
  },
  noCanvas: {
    place: 'no canvas at all',
    made: 'getContext gives null',
    holds: 'the page says that it cannot draw; the sentence follows an edit, a table and its file are made',
  },
  zoomed: {
    place: '400 % zoom of 1280 x 1024',
    made: 'a window of 320 x 256',
    holds: 'nothing is wider than the window; each tool opens, is seen and is closed by its button',
  },
  spaced: {
    place: 'lines, letters and words set further apart by the reader (WCAG 1.4.12)',
    made: 'a style sheet of that spacing, on the bench with all rows open, a tool and a dialog',
    holds: 'no text lies on another or on a control, none is cut, nothing is wider than the window',
  },
  otherDigits: {
    place: 'a browser in Arabic, its keyboard too',
    made: 'locale ar-SA; Arabic digits and decimal sign typed',
    holds: 'the value is taken, and written back as all numbers of the page are',
  },
  comma: {
    place: 'a browser in German',
    made: 'locale de-DE; a comma typed',
    holds: 'the value is taken, and written back with a point',
  },
  otherCalendar: {
    place: 'a browser that counts other years',
    made: 'locale ar-SA, in which a date is of another calendar',
    holds: 'dates on paper are those of the page’s own language',
  },
  halfHours: {
    place: 'clocks that differ by half and quarter hours, and the night a clock is put back',
    made: 'time zones Asia/Kolkata, America/St_Johns, Pacific/Chatham, Europe/Vienna',
    holds: 'a locked answer has its offset to the minute, and its instant is the same wherever it is read',
  },
  turnedNames: {
    place: 'names that turn the direction of what is written',
    made: 'a skill and an athlete named with a right-to-left override, Hebrew, Arabic, emoji, combining marks',
    holds: 'the words around the name stay in their order',
  },
  longNames: {
    place: 'a name as long as may be, without a space',
    made: 'a skill, an athlete and a club of 80 letters each',
    holds: 'nothing is wider than the window, and the buttons of the bar stay in it',
  },
  twoBuilds: {
    place: 'two versions under two paths of one origin',
    made: 'the build in /a/ and, as another version, in /b/',
    holds:
      'each has files of its own and opens without a network; they share the skill at hand and the shelf, and neither takes from the other',
  },
} as const satisfies Record<string, OddPlace>;

export const titleOf = (id: keyof typeof oddPlaces): string => `${oddPlaces[id].place}: ${oddPlaces[id].holds}`;

/** Those that `npm test` walks; the others are of `test:all`. */
export const PLACES_IN_TEST: readonly (keyof typeof oddPlaces)[] = [
  'noWorker',
  'noCanvas',
  'turnedNames',
  'longNames',
  'zoomed',
];
