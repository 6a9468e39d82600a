/** What is alive in the page, by counts: what it made and has not given back. Watched from the start of the page, read after collection. */
import type { CDPSession, Page } from '@playwright/test';

export type LiveCounts = Readonly<Record<string, number>>;

/** Before the page opens: each maker of what has to be given back is counted, and so is its way back. */
export async function watchLive(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const live = new Map<string, Set<unknown>>();
    const of = (name: string): Set<unknown> => {
      const known = live.get(name) ?? new Set();
      live.set(name, known);
      return known;
    };
    /** collected ones are not alive, so they are held weakly */
    const weak = new Map<string, WeakRef<object>[]>();
    const watchWeakly = (name: string, one: object): void => {
      weak.set(name, [...(weak.get(name) ?? []), new WeakRef(one)]);
    };
    type Any = Record<string, (...given: unknown[]) => unknown>;
    const around = (
      proto: object | undefined,
      name: string,
      after: (self: unknown, made: unknown, given: unknown[]) => void,
    ): void => {
      const own = (proto as Any | undefined)?.[name];
      if (!proto || !own) return;
      (proto as Any)[name] = function (this: unknown, ...given: unknown[]) {
        const made = own.apply(this, given);
        after(this, made, given);
        return made;
      };
    };
    const constructed = (name: string, made: (one: object) => void): void => {
      const own = (globalThis as unknown as Record<string, (new (...given: unknown[]) => object) | undefined>)[name];
      if (!own) return;
      const Watched = class extends own {
        constructor(...given: unknown[]) {
          super(...given);
          made(this);
        }
      };
      Object.defineProperty(Watched, 'name', { value: name });
      Object.assign(globalThis, { [name]: Watched });
    };
    const closedBy = (name: string, end: string): void => {
      const proto = (globalThis as unknown as Record<string, { prototype: object } | undefined>)[name]?.prototype;
      around(proto, end, (self) => of(name).delete(self));
      constructed(name, (one) => of(name).add(one));
    };
    closedBy('Worker', 'terminate');
    closedBy('VideoFrame', 'close');
    around(globalThis.VideoFrame?.prototype, 'clone', (_, made) => of('VideoFrame').add(made));
    closedBy('AudioContext', 'close');
    closedBy('BroadcastChannel', 'close');
    constructed('OffscreenCanvas', (one) => watchWeakly('OffscreenCanvas', one));
    around(Document.prototype, 'createElement', (_, made, [tag]) => {
      if (tag === 'canvas') watchWeakly('canvas', made as object);
    });
    for (const name of ['ResizeObserver', 'MutationObserver', 'IntersectionObserver']) {
      const { prototype } = (globalThis as unknown as Record<string, { prototype: object }>)[name];
      around(prototype, 'disconnect', (self) => of(name).delete(self));
      around(prototype, 'observe', (self) => of(name).add(self));
    }
    around(URL, 'createObjectURL', (_, made) => of('object URLs').add(made));
    around(URL, 'revokeObjectURL', (_, __, [url]) => of('object URLs').delete(url));
    around(globalThis, 'createImageBitmap', (_, made) => {
      void (made as Promise<ImageBitmap>).then(
        (one) => of('ImageBitmap').add(one),
        () => undefined,
      );
    });
    around(ImageBitmap.prototype, 'close', (self) => of('ImageBitmap').delete(self));
    around(IDBFactory.prototype, 'open', (_, made) => {
      const request = made as IDBOpenDBRequest;
      request.addEventListener('success', () => {
        of('databases').add(request.result);
        request.result.addEventListener('close', () => of('databases').delete(request.result));
      });
    });
    around(IDBDatabase.prototype, 'close', (self) => of('databases').delete(self));
    around(globalThis, 'setInterval', (_, id) => of('intervals').add(id));
    around(globalThis, 'clearInterval', (_, __, [id]) => of('intervals').delete(id));
    for (const kind of ['WebGLRenderingContext', 'WebGL2RenderingContext'] as const)
      for (const what of [
        'Buffer',
        'Texture',
        'Framebuffer',
        'Program',
        'Shader',
        'VertexArray',
        'Renderbuffer',
        'Sampler',
      ]) {
        around(globalThis[kind]?.prototype, `create${what}`, (_, made) => of('GPU objects').add(made));
        around(globalThis[kind]?.prototype, `delete${what}`, (_, __, [one]) => of('GPU objects').delete(one));
      }
    around(HTMLCanvasElement.prototype, 'getContext', (_, made) => {
      if (/WebGL/.test(String(made))) watchWeakly('WebGL contexts', made as object);
    });
    // by target, kind and function, as the browser tells listeners apart
    const ids = new WeakMap<object, number>();
    let lastId = 0;
    const idOf = (one: unknown): number => {
      if (typeof one !== 'object' && typeof one !== 'function') return 0;
      if (one === null) return 0;
      const id = ids.get(one) ?? ++lastId;
      ids.set(one, id);
      return id;
    };
    const listenerOf = (self: unknown, [kind, given, options]: unknown[]): string =>
      [
        idOf(self),
        kind,
        idOf(given),
        typeof options === 'object' ? (options as { capture?: boolean } | null)?.capture === true : options === true,
      ].join();
    const heard = (self: unknown): string | undefined =>
      self === undefined || self === window
        ? 'window listeners'
        : self === document
          ? 'document listeners'
          : self instanceof MediaQueryList
            ? 'media listeners'
            : undefined;
    const { addEventListener, removeEventListener } = EventTarget.prototype;
    EventTarget.prototype.addEventListener = function (
      this: EventTarget,
      ...given: Parameters<typeof addEventListener>
    ) {
      const name = heard(this);
      if (name && given[1]) {
        const key = listenerOf(this ?? window, given);
        const options = given[2];
        const [kind, listener] = given;
        of(name).add(key);
        if (typeof options === 'object' && options.once && typeof listener === 'function') {
          const forget = (): void => void of(name).delete(key);
          addEventListener.call(this ?? window, kind, forget, { ...options });
        }
        if (typeof options === 'object' && options.signal)
          options.signal.addEventListener('abort', () => of(name).delete(key));
      }
      return addEventListener.apply(this ?? window, given);
    };
    EventTarget.prototype.removeEventListener = function (
      this: EventTarget,
      ...given: Parameters<typeof removeEventListener>
    ) {
      const name = heard(this);
      if (name && given[1]) of(name).delete(listenerOf(this ?? window, given));
      return removeEventListener.apply(this ?? window, given);
    };
    let frames = 0;
    around(globalThis, 'requestAnimationFrame', () => {
      frames++;
    });
    Object.assign(globalThis, {
      liveCounts: () => {
        const counts: Record<string, number> = {};
        for (const [name, all] of live) counts[name] = all.size;
        for (const [name, all] of weak) {
          const there = all.filter((one) => one.deref() !== undefined);
          weak.set(name, there);
          counts[name] = there.length;
        }
        return counts;
      },
      framesAsked: () => frames,
    });
  });
}

interface Watched {
  liveCounts(): Record<string, number>;
  framesAsked(): number;
}

/** How long an idle page is looked at for loops of frames, ms. */
const IDLE_MS = 400;

export async function readLive(page: Page, devtools: CDPSession): Promise<LiveCounts> {
  // what one collection lets go of may hold more
  for (let i = 0; i < 3; i++) {
    await devtools.send('HeapProfiler.collectGarbage');
    await page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done, 20))));
  }
  const own = await page.evaluate(async (ms) => {
    const watched = window as unknown as Watched;
    const before = watched.framesAsked();
    await new Promise((done) => setTimeout(done, ms));
    let nodes = 1;
    const walk = document.createTreeWalker(document);
    while (walk.nextNode()) nodes++;
    return {
      ...watched.liveCounts(),
      'frames asked for when idle': watched.framesAsked() - before,
      'nodes in the page': nodes,
      'local storage, bytes': Object.entries(localStorage).reduce(
        (sum, [key, value]) => sum + key.length + String(value).length,
        0,
      ),
    };
  }, IDLE_MS);
  await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? 0;
  return {
    ...own,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
    documents: of('Documents'),
    frames: of('Frames'),
    'heap, kB': Math.round(of('JSHeapUsedSize') / 1000),
  };
}
