"""Results on disk: written whole, read with distrust, compared value by value, tabled."""

from optimizer.results.compare import differences, document_differences
from optimizer.results.document import option_record, to_document
from optimizer.results.read import NEWEST, Result, read_result, result_of
from optimizer.results.table import csv_table
from optimizer.results.versions import versions
from optimizer.results.write import ready_folder, to_text, write_whole

__all__ = [
    "NEWEST",
    "Result",
    "csv_table",
    "differences",
    "document_differences",
    "option_record",
    "read_result",
    "ready_folder",
    "result_of",
    "to_document",
    "to_text",
    "versions",
    "write_whole",
]
