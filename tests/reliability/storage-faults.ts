// What may become of the browser's storage under a page, one row a case: where it happens, when, what is said, what is found after.

export type StoreFault =
  /** reads, and refuses every write */
  | 'full'
  /** the database does not open */
  | 'closed'
  /** no answer comes until it is well again; then all that was asked is answered */
  | 'silent'
  /** after two seconds it says that it does not open */
  | 'refusesLate'
  /** a write begins and is taken back */
  | 'aborts'
  /** deleted from outside, and well after that */
  | 'deleted'
  | 'well';
/** Of local and session storage. */
export type TextFault = 'full' | 'forbidden' | 'well';

export interface StorageFault {
  readonly name: string;
  readonly store: StoreFault;
  readonly local?: TextFault;
  readonly tab?: TextFault;
  /** from the start of the page, or only once it is open */
  readonly since: 'start' | 'open';
  /** what the page hears, in order, until it has made a change */
  readonly says: readonly string[];
  /** the change counts as kept while the fault lasts: killed at that moment, the page is found with it */
  readonly isKept: boolean;
}

export const STORAGE_FAULTS: readonly StorageFault[] = [
  { name: 'the database is full', store: 'full', since: 'open', says: [], isKept: true },
  { name: 'the database is full from the start', store: 'full', since: 'start', says: [], isKept: true },
  { name: 'everything is full', store: 'full', local: 'full', since: 'open', says: ['not kept'], isKept: false },
  {
    name: 'everything is full from the start',
    store: 'full',
    local: 'full',
    since: 'start',
    says: ['not kept'],
    isKept: false,
  },
  {
    name: 'the database is full and local storage forbidden',
    store: 'full',
    local: 'forbidden',
    since: 'open',
    says: ['not kept'],
    isKept: false,
  },
  { name: 'the database does not open', store: 'closed', since: 'start', says: ['unreadable'], isKept: true },
  {
    name: 'the database does not open and local storage is full',
    store: 'closed',
    local: 'full',
    since: 'start',
    says: ['unreadable', 'not kept'],
    isKept: false,
  },
  {
    name: 'nothing may be stored',
    store: 'closed',
    local: 'forbidden',
    tab: 'forbidden',
    since: 'start',
    says: ['unreadable', 'not kept'],
    isKept: false,
  },
  { name: 'the database closes under the page', store: 'closed', since: 'open', says: [], isKept: true },
  {
    name: 'the database closes under the page, and local storage is full',
    store: 'closed',
    local: 'full',
    since: 'open',
    says: ['not kept'],
    isKept: false,
  },
  {
    name: 'the database does not answer at the start',
    store: 'silent',
    since: 'start',
    says: ['reading'],
    isKept: true,
  },
  {
    name: 'the database does not answer at the start, and local storage is full',
    store: 'silent',
    local: 'full',
    since: 'start',
    says: ['reading', 'not kept'],
    isKept: false,
  },
  {
    name: 'the database does not answer at the start, and local storage is forbidden',
    store: 'silent',
    local: 'forbidden',
    since: 'start',
    says: ['reading', 'not kept'],
    isKept: false,
  },
  {
    name: 'the database says late that it does not open',
    store: 'refusesLate',
    since: 'start',
    says: ['reading', 'unreadable'],
    isKept: true,
  },
  { name: 'the database falls silent', store: 'silent', since: 'open', says: [], isKept: true },
  { name: 'a transaction is taken back half way', store: 'aborts', since: 'open', says: [], isKept: true },
  {
    name: 'a transaction is taken back half way, and local storage is full',
    store: 'aborts',
    local: 'full',
    since: 'open',
    says: ['not kept'],
    isKept: false,
  },
  { name: 'transactions are taken back from the start', store: 'aborts', since: 'start', says: [], isKept: true },
  { name: 'the database is deleted', store: 'deleted', since: 'open', says: ['deleted', 'kept'], isKept: true },
  {
    name: 'the database is deleted, and local storage is full',
    store: 'deleted',
    local: 'full',
    since: 'open',
    says: ['deleted', 'kept'],
    isKept: true,
  },
  { name: 'local storage is full', store: 'well', local: 'full', since: 'start', says: [], isKept: true },
  {
    name: 'local storage throws when it is read',
    store: 'well',
    local: 'forbidden',
    since: 'start',
    says: [],
    isKept: true,
  },
  {
    name: 'session storage throws when it is read',
    store: 'well',
    tab: 'forbidden',
    since: 'start',
    says: [],
    isKept: true,
  },
  {
    name: 'local and session storage throw when they are read',
    store: 'well',
    local: 'forbidden',
    tab: 'forbidden',
    since: 'start',
    says: [],
    isKept: true,
  },
];

/** What stands in the place of a field of a record that was kept. */
export const OTHER_VALUES: readonly unknown[] = [null, true, -1, Number.NaN, 'text', '', [], [null], {}, { title: 4 }];

/** Places of a record of a session whose values are other ones, a path each. */
export const SESSION_PLACES: readonly (readonly (string | number)[])[] = [
  [],
  ['version'],
  ['savedAt'],
  ['cursorS'],
  ['owner'],
  ['unread'],
  ['history'],
  ['history', 'doc'],
  ['history', 'doc', 'title'],
  ['history', 'doc', 'phases'],
  ['history', 'doc', 'athlete'],
  ['history', 'done'],
  ['history', 'done', 0],
  ['history', 'done', 1],
  ['history', 'done', 1, 'title'],
  ['history', 'done', 1, 'difference'],
  ['history', 'done', 1, 'difference', 0],
  ['history', 'done', 1, 'difference', 0, 'path'],
  ['history', 'done', 1, 'difference', 0, 'path', 0],
  ['history', 'done', 1, 'difference', 0, 'before'],
  ['history', 'done', 1, 'beside'],
  ['history', 'done', 1, 'opened'],
  ['history', 'done', 1, 'opened', 'before'],
  ['history', 'done', 1, 'opened', 'ids'],
  ['history', 'undone'],
  ['history', 'undone', 0],
  ['history', 'undone', 0, 'difference'],
  ['history', 'mark'],
  ['history', 'beside'],
  ['history', 'beside', 0],
  ['history', 'origin'],
  ['history', 'id'],
  ['history', 'lastId'],
  ['history', 'original'],
];

/** The same of an entry of the shelf. */
export const ENTRY_PLACES: readonly (readonly (string | number)[])[] = [
  [],
  ['kind'],
  ['id'],
  ['revision'],
  ['savedAt'],
  ['value'],
  ['value', 'version'],
  ['value', 'title'],
  ['value', 'phases'],
  ['value', 'athlete'],
  ['original'],
];
