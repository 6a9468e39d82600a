let tell: (() => void) | undefined;
/** Hears of every part that did not load. */
export const onPartFailed = (listener: () => void): void => {
  tell = listener;
};

/**
 * A part of the page that is loaded when it is needed, once; after a failure it is loaded again when it is asked for again.
 * Some browsers remember a module that did not load: then its address is changed, where the error names it.
 */
export function loadPart<Module, Part>(
  load: () => Promise<Module>,
  pick: (module: Module) => Part,
  loadAddress: (address: string) => Promise<unknown> = (address) => import(/* @vite-ignore */ address),
): () => Promise<Part> {
  let known: Promise<Part> | undefined;
  let failures = 0;
  const attempt = async (): Promise<Part> => {
    try {
      return pick(await load());
    } catch (error) {
      failures++;
      const address = failures > 1 ? addressIn(error) : undefined;
      if (!address) throw error;
      address.searchParams.set('again', String(failures));
      const part = pick((await loadAddress(address.href)) as Module);
      if (part === undefined) throw error;
      return part;
    }
  };
  return () => {
    known ??= attempt().catch((error: unknown) => {
      known = undefined;
      tell?.();
      throw error;
    });
    return known;
  };
}

/** Of the module that an import says did not load; Safari names none. */
function addressIn(error: unknown): URL | undefined {
  const found = error instanceof Error ? /https?:\/\/\S+\.m?[jt]sx?/.exec(error.message) : null;
  return found ? new URL(found[0]) : undefined;
}
