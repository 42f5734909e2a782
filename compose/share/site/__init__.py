"""The page of a common shelf: plain files to look through, search and download, without any network."""
