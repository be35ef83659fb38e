"""output"""
