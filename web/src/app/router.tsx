import { createBrowserRouter, type RouteObject } from 'react-router';
import { Frame } from './frame.tsx';

export const pages = [
  ['', 'Overview'],
  ['farms', 'Farms'],
  ['funding', 'Funding'],
  ['rounds', 'Rounds'],
  ['awards', 'Awards'],
  ['loans', 'Loans'],
  ['fuel', 'Fuel'],
  ['winters', 'Winters'],
  ['evidence', 'Evidence'],
  ['assumptions', 'Assumptions'],
  ['studies', 'Studies'],
  ['import', 'Import'],
] as const;

/** The pages of one co-op; every address begins with its base, so that a link opens the same view for whoever follows it. */
export const routerFor = (basename: string, notice?: string) => createBrowserRouter(routes(notice), { basename });

const routes = (notice?: string): RouteObject[] => [
  {
    path: '/',
    element: <Frame {...(notice ? { notice } : {})} />,
    children: [
      { index: true, lazy: async () => ({ Component: (await import('../features/overview/overview-page.tsx')).OverviewPage }) },
      { path: 'farms', lazy: async () => ({ Component: (await import('../features/farms/farms-page.tsx')).FarmsPage }) },
      { path: 'farms/:farmId', lazy: async () => ({ Component: (await import('../features/farms/farm-page.tsx')).FarmPage }) },
      { path: 'supplies/:supplyId', lazy: async () => ({ Component: (await import('../features/farms/supply-page.tsx')).SupplyPage }) },
      { path: 'houses', lazy: async () => ({ Component: (await import('../features/farms/houses-page.tsx')).HousesPage }) },
      { path: 'houses/new', lazy: async () => ({ Component: (await import('../features/farms/new-house-page.tsx')).NewHousePage }) },
      { path: 'houses/:houseId', lazy: async () => ({ Component: (await import('../features/farms/house-page.tsx')).HousePage }) },
      {
        path: 'houses/:houseId/sheet',
        lazy: async () => ({ Component: (await import('../features/farms/grower-sheet.tsx')).GrowerSheetPage }),
      },
      { path: 'co-ops', lazy: async () => ({ Component: (await import('../features/farms/coops-page.tsx')).CoopsPage }) },
      { path: 'options/:optionId', lazy: async () => ({ Component: (await import('../features/retrofits/option-page.tsx')).OptionPage }) },
      { path: 'funding', lazy: async () => ({ Component: (await import('../features/funding/funding-page.tsx')).FundingPage }) },
      { path: 'rounds', lazy: async () => ({ Component: (await import('../features/funding/rounds-page.tsx')).RoundsPage }) },
      {
        path: 'rounds/enter',
        lazy: async () => ({ Component: (await import('../features/funding/enter-round-page.tsx')).EnterRoundPage }),
      },
      { path: 'rounds/:roundId', lazy: async () => ({ Component: (await import('../features/funding/round-page.tsx')).RoundPage }) },
      { path: 'rounds/:roundId/memo', lazy: async () => ({ Component: (await import('../features/funding/memo-page.tsx')).MemoPage }) },
      { path: 'awards', lazy: async () => ({ Component: (await import('../features/funding/awards-page.tsx')).AwardsPage }) },
      { path: 'awards/:awardId', lazy: async () => ({ Component: (await import('../features/funding/award-page.tsx')).AwardPage }) },
      {
        path: 'awards/:awardId/letter',
        lazy: async () => ({ Component: (await import('../features/funding/letter-page.tsx')).LetterPage }),
      },
      { path: 'loans', lazy: async () => ({ Component: (await import('../features/lending/loans-page.tsx')).LoansPage }) },
      { path: 'loans/book', lazy: async () => ({ Component: (await import('../features/lending/book-page.tsx')).BookPage }) },
      { path: 'loans/:caseId', lazy: async () => ({ Component: (await import('../features/lending/loan-page.tsx')).LoanPage }) },
      { path: 'fuel', lazy: async () => ({ Component: (await import('../features/fuel/fuel-page.tsx')).FuelPage }) },
      { path: 'fuel/prices', lazy: async () => ({ Component: (await import('../features/prices/prices-page.tsx')).PricesPage }) },
      { path: 'winters', lazy: async () => ({ Component: (await import('../features/winters/winters-page.tsx')).WintersPage }) },
      { path: 'evidence', lazy: async () => ({ Component: (await import('../features/trials/evidence-page.tsx')).EvidencePage }) },
      {
        path: 'assumptions',
        lazy: async () => ({ Component: (await import('../features/assumptions/assumptions-page.tsx')).AssumptionsPage }),
      },
      { path: 'studies', lazy: async () => ({ Component: (await import('../features/studies/studies-page.tsx')).StudiesPage }) },
      { path: 'import', lazy: async () => ({ Component: (await import('../features/imports/import-page.tsx')).ImportPage }) },
      { path: '*', element: <p>There is no such page. Choose one above.</p> },
    ],
  },
];
