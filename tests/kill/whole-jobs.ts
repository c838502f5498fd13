// Jobs that were brought in or removed as a whole: each is found wholly there or not at all, as it was acknowledged.
import type { Found, Whole } from './phases.ts';
import type { Loss } from './ledger.ts';

type Brought = Extract<Whole, { readonly kind: 'job' }>;

interface Known {
  readonly job: Brought;
  /** `coming` and `leaving` were begun, and nobody said that they are done. */
  readonly standing: 'coming' | 'here' | 'leaving' | 'gone';
}

export class WholeJobs {
  readonly #known = new Map<string, Known>();

  begun(whole: Whole): void {
    this.#stands(whole, { job: 'coming', removed: 'leaving' });
  }

  acknowledged(whole: Whole): void {
    this.#stands(whole, { job: 'here', removed: 'gone' });
  }

  missing(found: readonly Found[]): Loss {
    const losses = [...this.#known.values()].map(({ job, standing }) =>
      this.#looked(job, standing, found.find(({ id }) => id === job.id) ?? null),
    );
    const strange = found
      .filter(({ id }) => id.includes('-brought-') && !this.#known.has(id))
      .map(({ id }) => `${id} came from nowhere`);
    return {
      lost: losses.filter(({ lost }) => lost > 0).length,
      why: [...losses.flatMap(({ why }) => why), ...strange],
    };
  }

  #looked(job: Brought, standing: Known['standing'], found: Found | null): Loss {
    const { id } = job;
    if (found && !isWhole(job, found)) {
      this.#known.delete(id);
      const lost = standing === 'here' ? 1 : 0;
      return { lost, why: [`${id} is there by half: ${JSON.stringify(found)}`] };
    }
    switch (standing) {
      case 'coming':
      case 'leaving':
        // Either is right; from now on it has to stay so.
        this.#known.set(id, { job, standing: found ? 'here' : 'gone' });
        return { lost: 0, why: [] };
      case 'here':
        if (found) return { lost: 0, why: [] };
        this.#known.delete(id);
        return { lost: 1, why: [`${id} was acknowledged as brought in and is not there`] };
      case 'gone':
        if (!found) return { lost: 0, why: [] };
        this.#known.delete(id);
        return { lost: 1, why: [`${id} was gone and is there again`] };
    }
  }

  #stands(whole: Whole, standings: Readonly<Record<Whole['kind'], Known['standing']>>): void {
    const job = whole.kind === 'job' ? whole : this.#known.get(whole.id)?.job;
    if (job) this.#known.set(whole.id, { job, standing: standings[whole.kind] });
  }
}

function isWhole({ hash, seals }: Brought, found: Found): boolean {
  const right = found.snapshots.filter((one) => one.right).map(({ seal }) => seal);
  return (
    found.kind === 'taken' &&
    found.revision === 1 &&
    found.listed === 1 &&
    found.hash === hash &&
    found.unreadable.length === 0 &&
    JSON.stringify(right) === JSON.stringify(seals)
  );
}
