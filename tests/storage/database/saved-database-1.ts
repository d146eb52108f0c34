// A database as version 1 of the app left it. Frozen: it must be readable for ever, so this file is never changed.

/** Makes it with nothing but the browser's own means; resolves once it is there and closed. */
export function makeDatabaseOfVersion1(factory: IDBFactory): Promise<void> {
  return new Promise((done, fail) => {
    const request = factory.open('ringwright', 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('settings');
    };
    request.onerror = () => fail(request.error);
    request.onsuccess = () => {
      const database = request.result;
      const transaction = database.transaction('settings', 'readwrite');
      transaction.objectStore('settings').put({ shape: 1, a4: 442, theme: 'light' }, 'settings');
      transaction.oncomplete = () => {
        database.close();
        done();
      };
      transaction.onabort = () => fail(transaction.error);
    };
  });
}
