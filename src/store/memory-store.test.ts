import { MemoryStore } from "./memory-store.ts";
import { notebookStoreContract } from "./notebook-store.contract.ts";

notebookStoreContract("MemoryStore", async () => new MemoryStore());
