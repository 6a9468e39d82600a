/** Listens to several events of the window; what comes back ends it. */
export function listen<K extends keyof WindowEventMap>(
  on: { readonly [E in K]: (event: WindowEventMap[E]) => void },
): () => void {
  const all = Object.entries(on) as [K, (event: Event) => void][];
  for (const [name, heard] of all) window.addEventListener(name, heard);
  return () => {
    for (const [name, heard] of all) window.removeEventListener(name, heard);
  };
}
