/** Makes a trigger that calls `run` with the next frame, once however often it was asked for. */
export function onceAFrame(run: () => void): () => void {
  let isDue = false;
  return () => {
    if (isDue) return;
    isDue = true;
    requestAnimationFrame(() => {
      isDue = false;
      run();
    });
  };
}
