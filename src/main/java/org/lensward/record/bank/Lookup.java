package org.lensward.record.bank;

/** How the cartons of a lot are found. */
public enum Lookup {
    /** By reading every lens Device: needs nothing of the server. */
    WHOLE_BANK,
    /** By the search parameter {@code device-lot}, on a server that held it before its first Device or has indexed them since. */
    INDEXED
}
