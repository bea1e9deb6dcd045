import { useState, type ReactNode } from 'react';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { dollars } from '../../lib/units/format.ts';
import type { Order } from './funding-query.ts';
import type { Rule, Rules } from './funding-rules.ts';

interface Props {
  rules: Rules;
  order: Order | undefined;
  field: (name: Rule, unit: string) => ReactNode;
}

/** Rules that fewer rounds turn: groups, tests, small and partial grants, data, the lot. */
export function MoreRules({ rules, order, field }: Props) {
  const used = rules.groups.length + rules.tests.length + rules.amounts.length;
  return (
    <details className="why" open={used > 0}>
      <summary>more rules: groups, tests, partial grants, ties</summary>
      {rules.groups.map((g, no) => {
        const told = order?.groups.find((x) => x.name === g.name);
        return (
          <p key={g.name}>
            At least {g.minimum} % goes to farms {g.name}
            {g.cost !== null ? `, whose grants cover ${String(g.cost)} %` : ''}. {told && `They hold ${dollars(told.fundedUsd)}. `}
            <button className="link" onClick={() => rules.drop('group', no)}>
              take away<span className="hidden"> the group {g.name}</span>
            </button>
          </p>
        );
      })}
      {rules.groups.length > 0 && order && (
        <p className="small">
          {Math.abs(order.groupsCostUsd) < 1
            ? 'The minimum shares cost nothing.'
            : `The minimum shares cost all members ${dollars(order.groupsCostUsd)} a season.`}
        </p>
      )}
      {rules.groups.length > 0 && (
        <label className="choice">
          <input type="checkbox" checked={rules.plain('held') === '1'} onChange={(e) => rules.set('held', e.target.checked ? '1' : '0')} />{' '}
          money that a group cannot use stays kept for it
        </label>
      )}
      <GroupForm rules={rules} />
      {rules.tests.map((t, no) => (
        <p key={t}>
          To be shown: {t}.{' '}
          <button className="link" onClick={() => rules.drop('test', no)}>
            take away<span className="hidden"> the test {t}</span>
          </button>
        </p>
      ))}
      <TestForm rules={rules} />
      <p>
        No grant under {field('minimumGrantUsd', '$')}; a smaller one than asked is offered down to {field('partialShare', '%')} of it. All
        public money together covers at most {field('publicShare', '%')} of the whole cost.
      </p>
      <label>
        <span>houses without a fuel record are</span>
        <select value={rules.plain('gradeC') || 'ON_BILLS'} onChange={(e) => rules.set('gradeC', e.target.value)}>
          <option value="ON_BILLS">funded on condition of bills</option>
          <option value="AS_OTHERS">funded like any other</option>
          <option value="REFUSED">not eligible</option>
        </select>
      </label>
      <label>
        <span>members by this day alone; empty = all</span>
        <input type="date" value={rules.plain('memberBy')} onChange={(e) => rules.set('memberBy', e.target.value)} />
      </label>
      <label>
        <span>retrofits it pays for, by code with blanks between; empty = all</span>
        <input
          key={rules.plain('codes')}
          defaultValue={rules.plain('codes')}
          onBlur={(e) => e.target.value !== rules.plain('codes') && rules.set('codes', e.target.value)}
        />
      </label>
      <p>
        Ties go by chance of lasting payback, then the smaller grant, then the earlier application, then a lot drawn with seed{' '}
        {field('lotSeed', '')}.
      </p>
    </details>
  );
}

function GroupForm({ rules }: { rules: Rules }) {
  const [name, setName] = useState('');
  const [share, setShare] = useState('');
  const [cost, setCost] = useState('');
  useUnsaved(name !== '' || share !== '' || cost !== '');
  return (
    <form
      aria-label="add a group"
      onSubmit={(e) => {
        e.preventDefault();
        rules.addGroup({ name: name.trim(), minimum: Number(share), cost: cost === '' ? null : Number(cost) });
        setName('');
        setShare('');
        setCost('');
      }}
    >
      <label>
        <span>group of farms, by the word they claim it with</span>
        <input value={name} onChange={(e) => setName(e.target.value)} required pattern="[^~]*[^~\s][^~]*" />
      </label>
      <label>
        <span>at least, % of the money</span>
        <input type="number" min={0} max={100} value={share} onChange={(e) => setShare(e.target.value)} required />
      </label>
      <label>
        <span>own cost share, %; empty = as all</span>
        <input type="number" min={1} max={100} value={cost} onChange={(e) => setCost(e.target.value)} />
      </label>
      <button className="link">add the group</button>
    </form>
  );
}

function TestForm({ rules }: { rules: Rules }) {
  const [words, set] = useState('');
  useUnsaved(words !== '');
  return (
    <form
      aria-label="add a test"
      onSubmit={(e) => {
        e.preventDefault();
        rules.addTest(words.trim());
        set('');
      }}
    >
      <label>
        <span>what each applicant must show</span>
        <input value={words} onChange={(e) => set(e.target.value)} required pattern=".*\S.*" />
      </label>
      <button className="link">add the test</button>
    </form>
  );
}
