/** Folder of the compiled `core`, begun and ended by a slash. */
declare const __CORE_BASE__: string;
