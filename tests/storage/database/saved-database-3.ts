// A database as version 3 of the app left it. Frozen: it must be readable for ever, so this file is never changed.

/** Makes it with nothing but the browser's own means; resolves once it is there and closed. */
export function makeDatabaseOfVersion3(factory: IDBFactory): Promise<void> {
  return new Promise((done, fail) => {
    const request = factory.open('ringwright', 3);
    request.onupgradeneeded = () => {
      const database = request.result;
      database.createObjectStore('settings');
      for (const name of [
        'pan-edits',
        'rounds',
        'round-ends',
        'marks',
        'blows',
        'erasures',
        'knock-checks',
        'stopgaps',
        'tuner-visits',
      ]) {
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
      const transaction = database.transaction(['readings', 'cards'], 'readwrite');
      const line = (hz: number, levelDb: number) => ({
        hz,
        sigmaCents: 0.2,
        decaySeconds: 0.4,
        levelDb,
      });
      transaction.objectStore('readings').put({
        shape: 1,
        id: 'reading-1',
        pan: 'pan-1',
        at: 1764100200000,
        kind: 'reading',
        round: null,
        note: 62,
        strikes: [
          {
            fundamental: line(293.2, -20),
            isInferred: false,
            octave: line(587.1, -26),
            octaveRival: null,
            third: { ...line(1175, -38), kind: 'double-octave' },
            glideCents: 1.4,
            peakDb: -12,
            loudness: 'good',
            alsoRinging: [],
          },
        ],
        taking: {
          source: 'microphone',
          sampleRate: 48000,
          processing: [],
          gaps: 0,
          appVersion: '0.1.0',
        },
        sound: null,
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
