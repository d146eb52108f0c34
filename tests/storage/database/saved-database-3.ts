// A database as version 3 of the database left it. Frozen: it must be readable for ever, so this file is never changed.

const early = ['pan-edits', 'rounds', 'round-ends', 'marks', 'blows', 'erasures'];

/** Makes it with nothing but the browser's own means; resolves once it is there and closed. */
export function makeDatabaseOfVersion3(factory: IDBFactory): Promise<void> {
  return new Promise((done, fail) => {
    const request = factory.open('ringwright', 3);
    request.onupgradeneeded = () => {
      const database = request.result;
      database.createObjectStore('settings');
      for (const name of [...early, 'knock-checks', 'stopgaps', 'tuner-visits']) {
        database.createObjectStore(name, { keyPath: 'id' }).createIndex('pan', 'pan');
      }
      const readings = database.createObjectStore('readings', { keyPath: 'id' });
      readings.createIndex('round', 'round');
      readings.createIndex('place', ['pan', 'note']);
      const attachments = database.createObjectStore('attachments', { keyPath: 'id' });
      attachments.createIndex('pan', 'pan');
      attachments.createIndex('soundBytes', 'soundBytes');
      database.createObjectStore('cards', { keyPath: 'pan' });
      database.createObjectStore('scratch');
    };
    request.onerror = () => fail(request.error);
    request.onsuccess = () => {
      const database = request.result;
      const transaction = database.transaction(['marks', 'cards'], 'readwrite');
      transaction.objectStore('marks').put({
        shape: 1,
        id: 'mark-1',
        pan: 'pan-1',
        at: 1764100200000,
        kind: 'mark',
        round: null,
        note: 62,
        mark: 'buzzing',
      });
      transaction.objectStore('cards').put({ pan: 'pan-1', changes: 1, card: null });
      transaction.oncomplete = () => {
        database.close();
        done();
      };
      transaction.onabort = () => fail(transaction.error);
    };
  });
}
