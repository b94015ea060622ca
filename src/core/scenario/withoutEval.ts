import { config } from 'zod';

// The schema library would compile its checks from text, and tries whether it may as soon as a schema is made: no page of ours lets
// it, and one way of checking in all engines is worth more than its speed. Imported before the first schema.
config({ jitless: true });
