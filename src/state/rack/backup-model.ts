// The rack, or one pan, out to a file and in again: made before it is handed out, checked before it is taken in.
import { type ReadonlySignal, signal } from '@preact/signals';
import type {
  BackupFiles,
  BackupRefusal,
  BackupScope,
  CheckedBackup,
} from '../../domain/ports/backup-files';
import type { FileHandout, FileOnHand, HandedOut } from '../../domain/ports/file-handout';
import type { Kept, PanStore, RackSize, StoreTrouble } from '../../domain/ports/pan-store';
import type { Clock } from '../../domain/ports/phone-ports';
import type { PanContents } from '../../domain/records/backup/backup-contents';
import type { BackupCounts } from '../../domain/records/backup/backup-format';
import type { Differing } from '../../domain/records/merging/differing';
import type { PanId } from '../../domain/records/rack-records';
import { currentPan, type PanField } from '../../domain/records/standing/current-pan';
import { backupAt } from '../../domain/settings/settings';
import { createLatest } from '../asking/latest';
import type { SettingsModel } from '../settings/settings-model';

export type GoingOut =
  | { readonly kind: 'idle' }
  | { readonly kind: 'making'; readonly part: number }
  | {
      readonly kind: 'ready';
      readonly scope: BackupScope;
      readonly file: FileOnHand;
      readonly contents: readonly PanContents[];
      /** Records that could not be read any more and are not in the file. */
      readonly leftOut: number;
      /** What became of the last try to hand it out. */
      readonly handedOut: HandedOut | null;
    }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

export type ComingIn =
  | { readonly kind: 'idle' }
  | { readonly kind: 'checking'; readonly part: number }
  | { readonly kind: 'refused'; readonly why: BackupRefusal }
  /** Nothing has been touched yet: the user says whether it is to be taken in. */
  | { readonly kind: 'checked'; readonly checked: CheckedArrival }
  | { readonly kind: 'taking'; readonly part: number }
  | {
      readonly kind: 'taken';
      readonly added: BackupCounts;
      readonly pans: readonly TakenPan[];
      /** Damaged entries that were replaced by whole ones. */
      readonly healed: number;
      /** What says something else than what is here: the user may choose. Chosen ones are gone from the list. */
      readonly differing: readonly NamedDiffering[];
      /** How many there were, also of those that are not listed. */
      readonly differingCount: number;
      /** Entries of the file that are here and were taken out: they stay so. */
      readonly takenOut: number;
      /** Lines of the file that were left out. */
      readonly leftOut: number;
    }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble | 'file-changed' };

/** A good file, and which of its pans are here already; null where the rack cannot be read. */
export interface CheckedArrival {
  readonly backup: CheckedBackup;
  readonly here: ReadonlySet<PanId> | null;
}

/** With the name of its pan; empty where it has none. */
export interface NamedDiffering extends Differing {
  readonly name: string;
}

/** A pan that got something new, with the fields of which two phones wrote different values. */
export interface TakenPan {
  readonly pan: PanId;
  readonly name: string;
  readonly isNew: boolean;
  readonly conflicts: readonly PanField[];
}

/**
 * More pans are only counted: nobody reads so long a list, and each must be read from the store (chosen, no source).
 */
const mostLookedAt = 200;

export interface BackupModel {
  readonly out: ReadonlySignal<GoingOut>;
  readonly into: ReadonlySignal<ComingIn>;
  make(scope: BackupScope): Promise<void>;
  /** Call inside a tap. */
  handOut(): Promise<void>;
  check(file: FileOnHand): Promise<void>;
  takeIn(): Promise<void>;
  /** Says which of two entries of one name is right; resolves once it is on disk, or to why it is not. */
  settle(key: string, whose: 'yours' | 'theirs'): Promise<Kept>;
  /** Forgets what was made and checked. */
  leave(): void;
}

export interface BackupPorts {
  readonly files: BackupFiles;
  readonly handout: FileHandout;
  readonly store: Pick<PanStore, 'size' | 'cards' | 'pan'>;
  readonly settings: Pick<SettingsModel, 'set'>;
  readonly clock: Clock;
}

export function createBackupModel(ports: BackupPorts): BackupModel {
  const { files, handout, store, settings, clock } = ports;
  const out = signal<GoingOut>({ kind: 'idle' });
  const into = signal<ComingIn>({ kind: 'idle' });
  const latest = createLatest();
  /** What the file in hand was made of. */
  let made: Pick<RackSize, 'readings' | 'changes'> = { readings: 0, changes: 0 };

  const pansHere = async (): Promise<ReadonlySet<PanId> | null> => {
    const kept = await store.cards();
    if (kept.kind === 'trouble') return null;
    return new Set([...kept.value.cards.map(({ pan }) => pan), ...kept.value.stale]);
  };
  const lookAt = async (
    pans: readonly PanId[],
    here: ReadonlySet<PanId> | null,
  ): Promise<readonly TakenPan[]> => {
    const looked = await Promise.all(
      pans.slice(0, mostLookedAt).map(async (pan) => {
        const records = await store.pan(pan);
        if (records.kind === 'trouble') return [];
        const { fields, conflicts } = currentPan(records.value);
        const isNew = here !== null && !here.has(pan);
        return [{ pan, name: fields.name, isNew, conflicts: conflicts.map(({ field }) => field) }];
      }),
    );
    return looked.flat();
  };

  return {
    out,
    into,
    async make(scope) {
      const isLatest = latest.begin();
      out.value = { kind: 'making', part: 0 };
      const size = await store.size();
      const onProgress = (part: number) => {
        if (isLatest()) out.value = { kind: 'making', part };
      };
      const file = await files.make(scope, onProgress, handout.bestForm());
      if (!isLatest()) return;
      made = size.kind === 'loaded' ? size.value : { readings: 0, changes: 0 };
      out.value =
        file.kind === 'trouble' ? file : { ...file, kind: 'ready', scope, handedOut: null };
    },
    async handOut() {
      const now = out.value;
      if (now.kind !== 'ready') return;
      const isLatest = latest.join();
      const handedOut = await handout.handOut(now.file);
      if (!isLatest()) return;
      out.value = { ...now, handedOut };
      const isOut = handedOut === 'shared' || handedOut === 'downloaded';
      if (isOut && now.scope.kind === 'rack') {
        settings.set({ lastBackup: backupAt(clock.now(), made) });
      }
    },
    async check(file) {
      const isLatest = latest.begin();
      into.value = { kind: 'checking', part: 0 };
      const checked = await files.check(file, (part) => {
        if (isLatest()) into.value = { kind: 'checking', part };
      });
      const here = checked.kind === 'fine' ? await pansHere() : null;
      if (!isLatest()) return;
      into.value =
        checked.kind === 'fine'
          ? { kind: 'checked', checked: { backup: checked.backup, here } }
          : checked;
    },
    async takeIn() {
      const now = into.value;
      if (now.kind !== 'checked') return;
      const { backup, here } = now.checked;
      into.value = { kind: 'taking', part: 0 };
      // It goes on when the screen is left: once begun, it is finished.
      const taken = await files.takeIn(backup, (part) => {
        into.value = { kind: 'taking', part };
      });
      if (taken.kind === 'trouble') {
        into.value = taken;
        return;
      }
      const pans = await lookAt(taken.pans, here);
      const leftOut = backup.report.leftOutCount;
      const { added, healed, differing, differingCount } = taken;
      const looked = await lookAt([...new Set(differing.map(({ pan }) => pan))], here);
      const names = new Map(looked.map(({ pan, name }) => [pan, name]));
      into.value = {
        kind: 'taken',
        added,
        pans,
        leftOut,
        healed,
        differing: differing.map((each) => ({ ...each, name: names.get(each.pan) ?? '' })),
        differingCount,
        takenOut: backup.effects.takenOut,
      };
    },
    async settle(key, whose) {
      const settled = await files.settle(key, whose);
      const now = into.value;
      if (settled.kind === 'kept' && now.kind === 'taken') {
        into.value = { ...now, differing: now.differing.filter((each) => each.key !== key) };
      }
      return settled;
    },
    leave() {
      latest.drop();
      out.value = { kind: 'idle' };
      if (into.value.kind !== 'taking') into.value = { kind: 'idle' };
    },
  };
}
