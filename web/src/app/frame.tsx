import { useIsFetching, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Link, NavLink, Outlet, useLocation } from 'react-router';
import { graphql } from '../lib/graphql/generated/index.ts';
import { ask } from '../lib/graphql/client.ts';
import { HeatingProvider, useUnits } from '../lib/units/units-context.tsx';
import { UnsavedProvider } from '../components/forms/unsaved.tsx';
import { CoopSwitch } from './coop-switch.tsx';
import { FirstSteps } from './first-steps.tsx';

import { pages } from './router.tsx';
import { useSheetFoot } from './sheet-foot.ts';
import { useArrival } from './arrival.ts';
import { StudyStatus } from './study-status.tsx';

const FrameQuery = graphql(`
  query Frame {
    version
    coops {
      id
      name
      isDemo
      isChosen
    }
    heatingValueSets {
      inUse
      propaneBtuPerGallon
      oilBtuPerGallon
      pelletsBtuPerTon
    }
    coop {
      name
      isDemo
      newestStudy {
        id
        number
        askedAt
        futuresCount
        changedSince
      }
      runningStudy {
        id
        number
        state
      }
    }
  }
`);

const THEME = 'theme';

function useTheme(): [string, (t: string) => void] {
  const [theme, set] = useState(
    () => localStorage.getItem(THEME) ?? (window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'),
  );
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  return [
    theme,
    (t) => {
      localStorage.setItem(THEME, t);
      set(t);
    },
  ];
}

interface Props {
  /** What to know about where a link led. */
  notice?: string;
}

export function Frame({ notice }: Props) {
  const { data, error } = useQuery({ queryKey: ['frame'], queryFn: () => ask(FrameQuery) });
  const [theme, setTheme] = useTheme();
  const { units, setUnits } = useUnits();
  const coop = data?.coop;
  const { pathname } = useLocation();
  const main = useArrival();
  // while anything it needs is not there yet; reading again what it shows does not make it busy
  const lacking = useIsFetching({ predicate: (q) => q.state.data === undefined });
  const [arrivedAt] = useState(pathname);
  const left = pathname !== arrivedAt;
  const study = coop?.newestStudy;
  useSheetFoot(
    coop
      ? [
          coop.isDemo ? 'Invented example: co-op, farms, weather and bills are made up' : coop.name,
          study && `study ${String(study.number)} of ${study.askedAt.slice(0, 10)}, ${study.futuresCount.toLocaleString('en-US')} futures`,
        ]
          .filter(Boolean)
          .join('; ')
      : '',
  );
  return (
    <div className="page">
      <a className="skip" href="#main">
        to the page itself
      </a>
      <header>
        <div className="head">
          <Link className="name" to="/">
            {coop?.name ?? 'FarmPortfolio'}
          </Link>
          <nav aria-label="pages">
            {pages.map(([path, name]) => (
              <NavLink key={path} to={`/${path}`} end={path === ''}>
                {name}
              </NavLink>
            ))}
          </nav>
          <div className="switches small">
            {data && <CoopSwitch coops={data.coops} />}
            <span role="group" aria-label="units">
              <button aria-pressed={units === 'us'} onClick={() => setUnits('us')}>
                $, US
              </button>
              {' · '}
              <button aria-pressed={units === 'si'} onClick={() => setUnits('si')}>
                SI
              </button>
            </span>
            <span role="group" aria-label="theme">
              <button aria-pressed={theme === 'light'} onClick={() => setTheme('light')}>
                light
              </button>
              {' · '}
              <button aria-pressed={theme === 'dark'} onClick={() => setTheme('dark')}>
                dark
              </button>
            </span>
          </div>
        </div>
        {coop && <StudyStatus newest={coop.newestStudy ?? undefined} running={coop.runningStudy ?? undefined} />}
        {notice && !left && <p role="note">{notice}</p>}
        {error && <p className="fault">The server does not answer: {error.message}</p>}
      </header>
      <main id="main" tabIndex={-1} ref={main} aria-busy={(!data && !error) || lacking > 0}>
        <HeatingProvider heating={data?.heatingValueSets.find((s) => s.inUse)}>
          <UnsavedProvider>
            <Outlet />
          </UnsavedProvider>
        </HeatingProvider>
        {coop && !coop.isDemo && !coop.newestStudy && (pathname === '/' || pathname === '/farms') && <FirstSteps />}
      </main>
      <footer>
        <span>
          {coop?.isDemo ? 'Invented example: co-op, farms, places, weather and bills are made up. Prices are public records.' : coop?.name}
        </span>
        <span>
          {coop?.newestStudy
            ? `Study ${String(coop.newestStudy.number)}, ${coop.newestStudy.askedAt.slice(0, 10)}, ${coop.newestStudy.futuresCount.toLocaleString('en-US')} futures`
            : 'no study yet'}
          {data ? `; program ${data.version}` : ''}{' '}
          <button className="link" onClick={() => window.print()}>
            print this page
          </button>
        </span>
      </footer>
    </div>
  );
}
