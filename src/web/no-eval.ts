import { config } from "zod";

// The pages forbid code made from text; without this the schema library tries it once and the browser reports it.
config({ jitless: true });
