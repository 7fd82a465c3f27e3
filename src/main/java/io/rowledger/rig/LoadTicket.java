package io.rowledger.rig;

/**
 * What a load ticket says was delivered.
 *
 * @param number the ticket's number as entered; empty for none
 * @param date its date as entered; empty for none
 * @param product the product's key in the rig file
 * @param amount what it held
 * @param temperatureC temperature of the load, °C; NaN where the ticket has none
 */
public record LoadTicket(String number, String date, String product, Amount amount, double temperatureC) {}
