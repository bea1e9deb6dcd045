import '@fontsource/source-sans-3/400.css';
import '@fontsource/source-sans-3/600.css';
import '@fontsource/source-serif-4/400.css';
import '@fontsource/source-serif-4/600.css';
import './tokens.css';
import './app.css';
import './ledger.css';
import './print.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRoot } from 'react-dom/client';
import { RouterProvider } from 'react-router';
import { takeCoopFromAddress } from '../lib/graphql/chosen-coop.ts';
import { UnitsProvider } from '../lib/units/units-context.tsx';
import { router } from './router.tsx';

takeCoopFromAddress();
const queries = new QueryClient({ defaultOptions: { queries: { retry: 1, refetchOnWindowFocus: false } } });

createRoot(document.getElementById('root')!).render(
  <QueryClientProvider client={queries}>
    <UnitsProvider>
      <RouterProvider router={router} />
    </UnitsProvider>
  </QueryClientProvider>,
);
