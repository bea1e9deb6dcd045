import { FaultList } from '../../components/forms/fault-list.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { useAct } from './act-hook.ts';
import { type Awarded, SaveAward, stepWords, VerifyAward } from './awards-query.ts';

const text = (n: number | null | undefined, scale = 1): string =>
  n === null || n === undefined ? '' : String(Math.round(n * scale * 100) / 100);

/** Steps done, cost, payment, money back, and what was verified with its interval. */
export function AwardForm({ award: a }: { award: Awarded }) {
  const all = useTyped(() => ({
    steps: a.milestones.map((m) => ({ ...m, doneOn: m.doneOn ?? '', evidence: m.evidence ?? '' })),
    invoiced: text(a.invoicedUsd),
    paid: text(a.paidUsd),
    returnedOn: a.returnedOn ?? '',
    returnedReason: a.returnedReason ?? '',
    share: text(a.verified?.share, 100),
    low: text(a.verified?.low, 100),
    high: text(a.verified?.high, 100),
    season: text(a.verified?.season),
    words: a.verified?.words ?? '',
  }));
  const { steps, ...typed } = all.typed;
  const put = (part: Partial<typeof all.typed>) => all.set({ ...all.typed, ...part });
  const setSteps = (next: typeof steps) => put({ steps: next });
  const save = useAct(
    async () =>
      (
        await ask(SaveAward, {
          input: {
            id: a.id,
            expectedRevision: a.revision,
            requestId: requestId(),
            milestones: steps.map((s) => ({ kind: s.kind, dueOn: s.dueOn, doneOn: s.doneOn || null, evidence: s.evidence || null })),
            invoicedUsd: typed.invoiced === '' ? null : Number(typed.invoiced),
            paidUsd: Number(typed.paid),
            returnedOn: typed.returnedOn || null,
            returnedReason: typed.returnedReason || null,
            verified:
              typed.share === ''
                ? null
                : {
                    share: Number(typed.share) / 100,
                    low: Number(typed.low) / 100,
                    high: Number(typed.high) / 100,
                    season: typed.season === '' ? null : Number(typed.season),
                    words: typed.words,
                  },
          },
        })
      ).saveAward,
    undefined,
    all.changed,
  );
  const verify = useAct(async () => (await ask(VerifyAward, { id: a.id, revision: a.revision, requestId: requestId() })).verifyAward);
  const field = (key: keyof typeof typed, label: string, type = 'number') => (
    <label>
      <span>{label}</span>
      <input type={type} step="any" value={typed[key]} onChange={(e) => put({ [key]: e.target.value })} />
    </label>
  );
  return (
    <section>
      <form
        aria-label="follow the award up"
        onSubmit={(e) => {
          e.preventDefault();
          save.run();
        }}
      >
        <h2>Follow it up</h2>
        <p className="caption">A day that is entered stands; what is left empty is not done yet.</p>
        <fieldset>
          <legend>steps</legend>
          <div className="form">
            {steps.map((s, at) => (
              <div key={s.kind}>
                <label>
                  <span>{stepWords[s.kind]} on</span>
                  <input
                    type="date"
                    value={s.doneOn}
                    onChange={(e) => setSteps(steps.map((x, i) => (i === at ? { ...x, doneOn: e.target.value } : x)))}
                  />
                </label>
                <label>
                  <span>due on</span>
                  <input
                    type="date"
                    required
                    value={s.dueOn}
                    aria-label={`${stepWords[s.kind]} due on`}
                    onChange={(e) => setSteps(steps.map((x, i) => (i === at ? { ...x, dueOn: e.target.value } : x)))}
                  />
                </label>
              </div>
            ))}
          </div>
        </fieldset>
        <fieldset>
          <legend>money</legend>
          <div className="form">
            {field('invoiced', 'eligible cost as invoiced, $')}
            {field('paid', 'grant paid so far, $')}
            {field('returnedOn', 'grant went back on', 'date')}
            {field('returnedReason', 'why it went back', 'text')}
          </div>
        </fieldset>
        <fieldset>
          <legend>verified, against the fuel saving that was promised</legend>
          <div className="form">
            {field('share', 'delivered, % of promised')}
            {field('low', 'one in twenty is lower, %')}
            {field('high', 'one in twenty is higher, %')}
            {field('season', 'season, year of its July')}
            {field('words', 'what stands behind it: which bills, whose reckoning', 'text')}
          </div>
        </fieldset>
        <FaultList faults={save.faults} />
        <button className="filled" disabled={save.pending}>
          Save the award
        </button>
      </form>
      <p>
        <button className="link" disabled={verify.pending} onClick={() => verify.run()}>
          verify it from the bills before and after
        </button>
      </p>
      <FaultList faults={verify.faults} />
    </section>
  );
}
