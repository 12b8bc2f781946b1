# Further packages that the tests need, one line each with the reason.
CHECK_PACKAGES += locales # a locale with a decimal comma is made from its sources
# `make reference` only, some 150 MB: general-purpose tables and models that are not ours.
REFERENCE_PACKAGES := freecad-python3 python3-fluids # thread tables, cut threads; pipe diameters
CHECK_PACKAGES += python3-fluids # a general-purpose reference for friction and fittings (brings scipy)
CHECK_PACKAGES += python3-iapws  # a general-purpose reference for water
CHECK_PACKAGES += python3-jsonschema # what is printed as JSON against docs/schema
# The counter page in a browser; node or npm from elsewhere (some bring both in one package) are as good.
CHECK_PACKAGES += chromium poppler-utils
CHECK_PACKAGES += fonts-liberation # as wide as the faces that a counter sheet asks for: pages are counted
CHECK_PACKAGES += $(if $(shell command -v node),,nodejs) $(if $(shell command -v npm),,npm)
CHECK_PACKAGES += zsh fish # completion is tried in them; 8 MB
