import { configure } from '@testing-library/react';

/** A busy machine may take longer than the usual second to draw a page whose answers are awaited. */
configure({ asyncUtilTimeout: 15_000 });
