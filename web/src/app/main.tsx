import '@fontsource/source-sans-3/400.css';
import '@fontsource/source-sans-3/600.css';
import '@fontsource/source-serif-4/400.css';
import '@fontsource/source-serif-4/600.css';
import './tokens.css';
import './app.css';
import './narrow.css';
import './ledger.css';
import './print.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRoot } from 'react-dom/client';
import { RouterProvider } from 'react-router';
import { coopBase, openCoop, readAddress } from '../lib/graphql/chosen-coop.ts';
import { ask } from '../lib/graphql/client.ts';
import { graphql } from '../lib/graphql/generated/index.ts';
import { UnitsProvider } from '../lib/units/units-context.tsx';
import { arrive, type Arrival } from './arriving-coop.ts';
import { NoSuchCoop } from './no-such-coop.tsx';
import { routerFor } from './router.tsx';

const Arriving = graphql(`
  query Arriving($id: ID!) {
    coops {
      id
      name
      isDemo
      isChosen
    }
    coopOf(id: $id) {
      id
      name
      isChosen
    }
  }
`);

const root = createRoot(document.getElementById('root')!);
const queries = new QueryClient({ defaultOptions: { queries: { retry: 1, refetchOnWindowFocus: false } } });

/** Where the server does not answer the page opens all the same and says so itself. */
async function arrival(url: URL): Promise<Arrival> {
  try {
    return await arrive(url, (id) => ask(Arriving, { id }));
  } catch {
    const { coopId } = readAddress(url.pathname);
    return { coopId, address: url.pathname + url.search + url.hash };
  }
}

async function open(): Promise<void> {
  const { coopId, address, notice, missing } = await arrival(new URL(window.location.href));
  if (missing) {
    root.render(<NoSuchCoop id={missing} />);
    return;
  }
  openCoop(coopId);
  window.history.replaceState(window.history.state, '', address);
  root.render(
    <QueryClientProvider client={queries}>
      <UnitsProvider>
        <RouterProvider router={routerFor(coopId ? coopBase(coopId) : '/', notice)} />
      </UnitsProvider>
    </QueryClientProvider>,
  );
}

void open();
