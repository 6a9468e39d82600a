/** What commands may do, over the page's parts. */
import type { Actions } from '../commands/actions.ts';
import { makeKeyWork } from './key-work.ts';
import { keptState, type Page } from './page.ts';

function makeActions(page: Page): Actions {
  const { doc, cursor, shell } = page;
  const { play } = cursor;
  return {
    keys: page.keepState(makeKeyWork),
    undoTitle: () => shell.undoing().undoTitle(),
    redoTitle: () => shell.undoing().redoTitle(),
    undo: () => shell.undoing().undo(),
    redo: () => shell.undoing().redo(),
    abandon: doc.abandon,
    openFile: doc.openFile,
    saveFile: doc.saveFile,
    hasOriginal: doc.hasOriginal,
    saveOriginal: doc.saveOriginal,
    saveVersion1: doc.saveVersion1,
    isPlaying: play.playing,
    isLooping: play.looping,
    togglePlay: play.toggle,
    toggleLoop: play.toggleLoop,
    setSpeed: play.setRate,
    moveCursor: cursor.moveBy,
    goTo: cursor.goTo,
    goToShape: cursor.goToShape,
    isMarked: () => cursor.pin() !== undefined,
    toggleMark: () => cursor.setPin(cursor.pin() === undefined ? cursor.at() : undefined),
    openPanel: shell.openPanel,
    read: shell.read,
    hasTool: shell.hasTool,
    openTool: shell.openTool,
    isLarge: shell.large.isOpen,
    toggleLarge: shell.toggleLarge,
    zoomLarge: (factor) => shell.large.zoom(factor),
    fitLarge: shell.large.fit,
    panLarge: shell.large.pan,
    followLarge: shell.large.toggleFollow,
    toggleRows: shell.rows.toggleAll,
    isHall: shell.hall,
    setHall: shell.setHall,
    ask: shell.ask,
    setTheme: shell.setTheme,
  };
}

export const useActions = keptState(makeActions);
