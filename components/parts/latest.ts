/** What comes later, for an effect that may have begun anew by then. */

/** Take what a promise gives, unless what is handed back was called before. */
export function latest<T>(coming: Promise<T>, take: (value: T) => void): () => void {
  let current = true;
  void coming.then((value) => {
    if (current) take(value);
  });
  return () => {
    current = false;
  };
}
