/** How this device's own store fares, for the screens to say. */
class Health {
  /** Why the store can't be opened; empty while it can. */
  failure = $state('');
  /** Log lines that the browser had cleared under an open page, and that the page has put back. */
  restored = $state(0);
  /** The browser has not promised to keep the store when it runs short of room. */
  mayBeCleared = $state(false);

  /** Asks the browser for its promise. */
  async askToKeep(): Promise<void> {
    const storage = navigator.storage as StorageManager | undefined;
    this.mayBeCleared = !((await storage?.persisted()) === true || (await storage?.persist()) === true);
  }
}

export const health = new Health();
