/** Where goods are kept. */
export const STORES =
  /^(cupboard|closet|drawer|stash|bag|box|trunk|chest|tin|basket|shelf|loft|attic|store|cabinet|wardrobe|hall|house|studio|workroom|shed|car|hand|stock|bin|pantry|crate|tote|garage|basement|hamper|bolt|press|workbox|workbasket|kit|dresser|hutch|locker|cabin|rag)$/;
