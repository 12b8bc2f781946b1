# Further packages that the tests need, one line each with the reason.
CHECK_PACKAGES += locales # a locale with a decimal comma is made from its sources
