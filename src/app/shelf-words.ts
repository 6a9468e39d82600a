/** Words of the user's shelf: skills and athletes kept in the browser. */
export const shelfTexts = {
  skills: 'Skills',
  athletes: 'Athletes',
  given: (name: string) => `Change athlete to ${name}`,
  save: 'Save to the shelf',
  saveAgain: 'Save changes',
  saveCopy: 'Save as another skill',
  state: {
    unsaved: 'not on the shelf',
    changed: 'changed since it was saved',
    saved: 'on the shelf',
  },
  stateShort: { unsaved: 'Save', changed: 'Save changes', saved: 'Saved' },
  rename: 'Rename',
  copyOf: (name: string) => `${name} (copy)`,
  copyElsewhere: (name: string) => `${name} (changed in another tab)`,
  savedTo: (name: string) => `${name} is on the shelf.`,
  savedChanges: (name: string) => `Changes of ${name} are on the shelf.`,
  madeCopy: (name: string, copy: string) =>
    `${name} was changed in another tab since you opened it. Yours is on the shelf beside it as “${copy}”.`,
  renamed: (name: string) => `Its name is now “${name}”.`,
  deleted: (name: string) => `${name} is deleted.`,
  broughtBack: (name: string) => `${name} is back.`,
  undo: 'Undo',
  gone: (name: string) => `${name} is no longer on the shelf: another tab deleted it.`,
  athleteRead: (name: string) => `${name} is on the shelf.`,
  athleteOnly: (name: string) => `${name} was read, but this browser refuses to keep it on the shelf.`,
  giveToSkill: 'Give to this skill',
  refused: 'This browser refuses to store anything now, so the shelf stays as it was. Save a file instead.',
  notAvailable:
    'This browser does not give its database to the page now, so the shelf cannot be shown. Files work as ever.',
  saveFile: 'Save a file',
  notSaved: 'Not saved',
  notSavedWhy: 'This browser refuses to store anything: a reload or a crash would lose this skill. Save it to a file.',
  reading: 'Still reading',
  readingWhy:
    'This browser is slow to give back what you had open before. It is shown when it comes, and nothing is written over it.',
  unreadable:
    'This browser does not open its database: what you had open before cannot be read now. Nothing is written over it, and it is shown when the database opens.',
  cameLate: (name: string) =>
    `“${name}”, which you had open before, has been read now. What you did since is shown; undo leads back to the other.`,
  open: 'Open it',
  cameBefore: 'What was done before the rest was read',
  damaged:
    'What this tab kept before is damaged and cannot be read. It is left as it is, and this page goes on without it. Save a file of it to have it looked at.',
  damagedName: 'damaged record',
  damagedSteps: (n: number) =>
    `The skill that this tab kept is whole. Of its undo ${n === 1 ? 'one step' : `${n} steps`} cannot be read, and will be gone. Save a file of what was kept if you need them.`,
  databaseDeleted:
    'The browser’s database of this page was deleted from outside. What this page has read is being written again.',
  newerKept: {
    record: (has: number, reads: number) =>
      `What this tab kept was written by a newer version of Shapeflight: its record has version ${has}, and this page reads records up to version ${reads}. It is left as it is, and this page starts beside it. Reload to get the newer version.`,
    skill: (has: number, reads: number) =>
      `What this tab kept was written by a newer version of Shapeflight: a skill in it has file version ${has}, and this page reads skills up to version ${reads}. It is left as it is, and this page starts beside it. Reload to get the newer version.`,
  },
  cutShort: 'Unfinished change',
  dismiss: 'Close this note',
  shapes: (n: number) => (n === 1 ? '1 shape' : `${n} shapes`),
} as const;
