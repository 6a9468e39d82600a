/** The page's loop gets a turn. A message: a timer waits 4 ms, and in a page that is not looked at a second. */
export function nextTurn(): Promise<void> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
